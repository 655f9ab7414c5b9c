package bendline.simulate;

import bendline.geometry.Point;

/**
 * Where hips and shoulders are, for a stature of 1.78 m: middles along the way to the water in metres, and how far each is turned,
 * radians, 0 square to the water, positive where the side of the upper hand is behind.
 *
 * @param hipX middle of the hips
 * @param shoulderX middle of the shoulders
 * @param hipTurn turn of the hips
 * @param shoulderTurn turn of the shoulders
 */
record Trunk(double hipX, double shoulderX, double hipTurn, double shoulderTurn) {

    /**
     * Half the width between the joints, metres: shoulders 0.259 and hips 0.191 of the stature wide (Drillis and Contini 1966, quoted
     * in Winter; from memory), of which the joints' middles are about 0.8.
     */
    private static final double HALF_HIPS = 0.135;

    private static final double HALF_SHOULDERS = 0.185;

    /** A share of the way to another. */
    Trunk towards(Trunk o, double share) {
        return new Trunk(
                hipX + share * (o.hipX - hipX),
                shoulderX + share * (o.shoulderX - shoulderX),
                hipTurn + share * (o.hipTurn - hipTurn),
                shoulderTurn + share * (o.shoulderTurn - shoulderTurn));
    }

    Point hips(double k) {
        return new Point(hipX * k, 0.93 * k);
    }

    Point shoulders(double k) {
        return new Point(shoulderX * k, 1.45 * k);
    }

    /** A hip; the near one is on the side of the upper hand. */
    Point hip(double k, boolean near) {
        return beside(hips(k), HALF_HIPS * k * Math.sin(hipTurn), near);
    }

    /** A shoulder; the near one is on the side of the upper hand. */
    Point shoulder(double k, boolean near) {
        return beside(shoulders(k), HALF_SHOULDERS * k * Math.sin(shoulderTurn), near);
    }

    private static Point beside(Point middle, double away, boolean near) {
        return new Point(middle.x() + (near ? -away : away), middle.y());
    }
}
