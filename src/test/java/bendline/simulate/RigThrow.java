package bendline.simulate;

import java.util.function.DoubleUnaryOperator;

/** How far a rig flies in still air: a point with quadratic drag, the running line's pull against its way, and weight. */
final class RigThrow {

    private static final double DT = 1e-3;
    private static final double LONGEST_SECONDS = 20;

    /** Height at which the water lies, metres. */
    private static final double WATER_Y = -0.35;

    private RigThrow() {}

    /**
     * Metres from the upright of the feet to where it comes down.
     *
     * @param from where it is let go, metres from the feet towards the water and above ground
     * @param speed m/s
     * @param angle above level, radians
     * @param pullAt pull of the running line in newtons by seconds after the release
     */
    static double distance(RigSpec rig, double[] from, double speed, double angle, DoubleUnaryOperator pullAt) {
        double x = from[0];
        double y = from[1];
        double vx = speed * Math.cos(angle);
        double vy = speed * Math.sin(angle);
        double t = 0;
        while (t < LONGEST_SECONDS) {
            double v = Math.hypot(vx, vy);
            double slow = rig.dragPerMetre() * v + pullAt.applyAsDouble(t) / rig.massKg() / Math.max(v, 0.1);
            double nx = vx - DT * slow * vx;
            double ny = vy - DT * (slow * vy + RodChain.GRAVITY);
            double py = y;
            x += DT * 0.5 * (vx + nx);
            y += DT * 0.5 * (vy + ny);
            vx = nx;
            vy = ny;
            t += DT;
            if (y <= WATER_Y && vy < 0) {
                return x - vx * DT * (WATER_Y - y) / (py - y);
            }
        }
        return x;
    }
}
