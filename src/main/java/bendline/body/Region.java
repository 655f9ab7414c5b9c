package bendline.body;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;

/**
 * A square of the picture, possibly turned.
 *
 * @param centre picture pixels
 * @param side picture pixels
 * @param turn clockwise turn of the person in it against the upright, radians
 */
record Region(Point centre, double side, double turn) {

    /** How much more than the circle round the body is looked at. */
    private static final double MARGIN = 1.25;

    /** A standing caster leans less; a larger turn is a body seen upside down, as happens with raised arms. */
    private static final double MOST_TURN = Math.toRadians(60);

    /** The square round a body, from the middle of its hips and a point of the circle round all of it, over its head. */
    static Region around(Point hips, Point rim) {
        Point d = rim.minus(hips);
        double turn = Math.atan2(d.x(), -d.y());
        return new Region(hips, 2 * d.norm() * MARGIN, Math.abs(turn) > MOST_TURN ? 0 : turn);
    }

    /**
     * Upright squares that cover a picture, each overlapping the next by half, the largest first.
     *
     * @param width of the picture, pixels
     * @param height of the picture, pixels
     * @param shares sides over the picture's longer side
     */
    static List<Region> over(double width, double height, double[] shares) {
        List<Region> out = new ArrayList<>();
        for (double share : shares) {
            double side = share * Math.max(width, height);
            for (double y : middles(height, side)) {
                for (double x : middles(width, side)) {
                    out.add(new Region(new Point(x, y), side, 0));
                }
            }
        }
        return out;
    }

    /** Where squares of a side are laid along a length so that each overlaps the next by half. */
    private static double[] middles(double length, double side) {
        int n = side >= length ? 1 : 1 + (int) Math.ceil((length - side) / (side / 2));
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            out[i] = n == 1 ? length / 2 : side / 2 + i * (length - side) / (n - 1);
        }
        return out;
    }

    /** The same square upright and on whole pixels, so that the next look does not hang on the last bits of this one. */
    Region upright() {
        return new Region(new Point(Math.rint(centre.x()), Math.rint(centre.y())), Math.rint(side), 0);
    }

    /** A point of the square, both coordinates 0 to 1 from its own top left, in the picture. */
    Point inPicture(double u, double v) {
        double x = (u - 0.5) * side;
        double y = (v - 0.5) * side;
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        return new Point(centre.x() + c * x - s * y, centre.y() + s * x + c * y);
    }

    /** The same for a point whose coordinates are both from 0 to 1. */
    Point inPicture(Point share) {
        return inPicture(share.x(), share.y());
    }
}
