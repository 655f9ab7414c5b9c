package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.List;

/**
 * Looks for a blank of known ends, or of known shape, in a picture as it is. A blank is darker or brighter than what is on
 * both sides of it, and the same of the two from end to end; ripples and branches are so only in pieces.
 *
 * @param plane the picture, noise units
 * @param polarity 1 for a blank brighter than its surroundings, −1 for a darker one
 */
record LineSearch(Plane plane, int polarity) {

    private static final int SAMPLES = 48;

    /** Inner share of a line that is not asked: the hand hides it. */
    private static final double HAND = 0.06;

    /** Distances from the centre at which the surroundings are sampled, pixels. */
    private static final double[] FLANKS_PX = {2.2, 3.5, 5.5};

    /** Contrast beyond which more does not count, noise units: a bright edge must not outweigh a long blank. */
    private static final double MOST = 4;

    private static final double STEEPEST = Math.toRadians(75);
    private static final int DIRECTIONS = 23;
    private static final double[] HANDLES = {0.25, 0.4, 0.55, 0.7};
    private static final int CURVE_POINTS = 40;

    private static final double COARSE_PX = 2.5;
    private static final int MOST_STEPS = 16;
    private static final double COARSE_TURN = Math.toRadians(2);
    private static final double MOST_TURN = Math.toRadians(10);

    /** What a shift by the whole reach costs, in contrast. */
    private static final double SHIFT_COST = 0.15;

    /** Behind the tip nothing may go on, or the line has slid inwards along the blank: where that is asked, line lengths. */
    private static final double BEYOND_FROM = 1.015;

    private static final double BEYOND_TO = 1.06;
    private static final int BEYOND_SAMPLES = 6;

    /** What it costs, against the same contrast along the whole line. */
    private static final double BEYOND_COST = 0.3;

    /** Mean contrast along a line against both of its sides, noise units; negative where it is of the other polarity. */
    double strength(Polyline line) {
        return mean(line, HAND, 1, SAMPLES);
    }

    /** The same between two shares of the line's length; beyond its end it goes on straight. */
    private double mean(Polyline line, double from, double to, int samples) {
        double sum = 0;
        for (int i = 0; i < samples; i++) {
            double s = line.length() * (from + (to - from) * i / (samples - 1));
            Point t = line.tangentAt(s);
            sum += contrast(line.at(s), new Point(-t.y(), t.x()));
        }
        return sum / samples;
    }

    private double contrast(Point at, Point normal) {
        float in = plane.sample(at.x(), at.y());
        if (Float.isNaN(in)) {
            return 0;
        }
        double best = -MOST;
        for (double flank : FLANKS_PX) {
            double left = in - plane.sample(at.x() + flank * normal.x(), at.y() + flank * normal.y());
            double right = in - plane.sample(at.x() - flank * normal.x(), at.y() - flank * normal.y());
            double both = Math.min(polarity * left, polarity * right);
            best = Double.isNaN(both) ? best : Math.max(best, both);
        }
        return Math.min(MOST, best);
    }

    /** The clearest of all smooth curves from one point to the other that bend to one side only. */
    Polyline between(Point grip, Point tip) {
        Polyline best = new Polyline(List.of(grip, tip));
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < DIRECTIONS; i++) {
            for (int j = 0; j < DIRECTIONS; j++) {
                double leave = STEEPEST * (2.0 * i / (DIRECTIONS - 1) - 1);
                double arrive = STEEPEST * (2.0 * j / (DIRECTIONS - 1) - 1);
                for (double first : leave * arrive > 0 ? new double[0] : HANDLES) {
                    for (double last : HANDLES) {
                        Polyline curve = curve(grip, tip, leave, arrive, first, last);
                        double strength = strength(curve);
                        if (strength > most) {
                            most = strength;
                            best = curve;
                        }
                    }
                }
            }
        }
        return best;
    }

    /** A cubic curve with given directions at its ends, against the straight line, and handles in shares of that. */
    private static Polyline curve(Point from, Point to, double leave, double arrive, double first, double last) {
        Point chord = to.minus(from);
        Point a = from.plus(turned(chord, leave).times(first));
        Point b = to.minus(turned(chord, arrive).times(last));
        List<Point> points = new ArrayList<>(CURVE_POINTS);
        for (int k = 0; k < CURVE_POINTS; k++) {
            double u = k / (CURVE_POINTS - 1.0);
            double v = 1 - u;
            points.add(from.times(v * v * v)
                    .plus(a.times(3 * u * v * v))
                    .plus(b.times(3 * u * u * v))
                    .plus(to.times(u * u * u)));
        }
        return new Polyline(points);
    }

    /** The line shifted and turned to where it is clearest. */
    Polyline moved(Polyline line, double reachPx) {
        double step = Math.max(COARSE_PX, reachPx / MOST_STEPS);
        Polyline coarse = best(line, reachPx, step, MOST_TURN, COARSE_TURN);
        Polyline finer = step > COARSE_PX ? best(coarse, step, COARSE_PX, COARSE_TURN, COARSE_TURN / 2) : coarse;
        return best(finer, COARSE_PX, COARSE_PX / 4, COARSE_TURN, COARSE_TURN / 4);
    }

    private Polyline best(Polyline line, double reachPx, double stepPx, double mostTurn, double turnStep) {
        Polyline best = line;
        double most = Double.NEGATIVE_INFINITY;
        int steps = (int) Math.ceil(reachPx / stepPx);
        int turns = (int) Math.round(mostTurn / turnStep);
        for (int r = -turns; r <= turns; r++) {
            Polyline turned = turned(line, r * turnStep);
            for (int y = -steps; y <= steps; y++) {
                for (int x = -steps; x <= steps; x++) {
                    Point shift = new Point(x * stepPx, y * stepPx);
                    Polyline candidate = turned.map(shift::plus);
                    double away = shift.norm() / reachPx + Math.abs(r * turnStep) / mostTurn;
                    double goesOn = Math.max(0, mean(candidate, BEYOND_FROM, BEYOND_TO, BEYOND_SAMPLES));
                    double strength = strength(candidate) - SHIFT_COST * away - BEYOND_COST * goesOn;
                    if (strength > most) {
                        most = strength;
                        best = candidate;
                    }
                }
            }
        }
        return best;
    }

    private static Polyline turned(Polyline line, double angle) {
        Point about = line.at(line.length() / 2);
        return line.map(p -> about.plus(turned(p.minus(about), angle)));
    }

    private static Point turned(Point p, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return new Point(c * p.x() - s * p.y(), s * p.x() + c * p.y());
    }
}
