package bendline.rod;

import bendline.geometry.Point;
import java.util.List;

/**
 * Points of a blank as they were seen, in metres in the plane of the bend, from the root outwards.
 *
 * @param points in order
 * @param along distance of each from the root along the blank, metres, rising
 * @param acrossSd 68 % uncertainty across the blank, metres
 * @param alongSd 68 % uncertainty along it, metres
 */
public record TracedArc(List<Point> points, double[] along, double acrossSd, double alongSd) {

    /** Fewest points from which a bend can be told at all: three parameters of place and direction, and a pull. */
    public static final int FEWEST = 5;

    /** Checks that there is one distance a point and that they rise. */
    public TracedArc {
        points = List.copyOf(points);
        if (along.length != points.size()) {
            throw new IllegalArgumentException(points.size() + " points need as many distances, got " + along.length);
        }
        for (int i = 1; i < along.length; i++) {
            if (!(along[i] > along[i - 1])) {
                throw new IllegalArgumentException(
                        "distances along the blank must rise, got " + along[i - 1] + " m and then " + along[i] + " m");
            }
        }
        if (!(acrossSd > 0) || !(alongSd > 0)) {
            throw new IllegalArgumentException(
                    "uncertainties must be positive, got " + acrossSd + " m across and " + alongSd + " m along");
        }
    }

    /** Points whose distances are taken from the points themselves, one uncertainty for all. */
    public static TracedArc through(List<Point> points, double sd) {
        double[] along = new double[points.size()];
        for (int i = 1; i < along.length; i++) {
            along[i] = along[i - 1] + points.get(i).distance(points.get(i - 1));
        }
        return new TracedArc(points, along, sd, 3 * sd);
    }

    int size() {
        return along.length;
    }

    double reach() {
        return along[along.length - 1];
    }

    /** Unit vector along the blank at a point. */
    Point direction(int i) {
        Point d = points.get(Math.min(size() - 1, i + 1)).minus(points.get(Math.max(0, i - 1)));
        return d.norm() > 0 ? d.times(1 / d.norm()) : new Point(1, 0);
    }
}
