package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Looks for a blank of known ends, or of known shape, in a picture as it is. A blank is darker or brighter than what is on
 * both sides of it, and the same of the two from end to end; ripples and branches are so only in pieces.
 *
 * @param plane the picture, noise units
 * @param polarity 1 for a blank brighter than its surroundings, −1 for a darker one
 */
record LineSearch(Plane plane, int polarity) {

    private static final int SAMPLES = 48;

    /** As long as a line is only nearly in place. */
    private static final int FEW_SAMPLES = 24;

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

    /** How much more or less a rod bends from frame to frame at its end, line lengths, and what that costs. */
    private static final double MOST_BEND = 0.05;

    private static final double SHAPE_COST = 0.05;

    /** Behind the tip nothing may go on, or the line has slid inwards along the blank: where that is asked, line lengths. */
    private static final double BEYOND_FROM = 1.015;

    private static final double BEYOND_TO = 1.06;

    /** Samples on the line for one beyond it. */
    private static final int LINE_TO_BEYOND = 8;

    /** What it costs, against the same contrast along the whole line. */
    private static final double BEYOND_COST = 0.3;

    /** The part of a line that lies in the picture, or null where next to nothing does. */
    @Nullable
    Polyline inView(Polyline line) {
        List<Point> points = line.resampled(CURVE_POINTS).points().stream()
                .filter(p -> !Float.isNaN(plane.sample(p.x(), p.y())))
                .toList();
        return points.size() < 3 ? null : new Polyline(points);
    }

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

    /**
     * Contrast against both sides at a place along a line, or so many pixels beside it; NaN out of the picture.
     *
     * @param s arc length, pixels; beyond the ends the line goes on straight
     */
    double contrastAt(Polyline line, double s, double besidePx) {
        Point t = line.tangentAt(s);
        Point normal = new Point(-t.y(), t.x());
        Point at = line.at(s).plus(normal.times(besidePx));
        return Float.isNaN(plane.sample(at.x(), at.y())) ? Double.NaN : contrast(at, normal);
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

    /**
     * The line shifted, turned and bent to where it is clearest.
     *
     * @param acrossPx how far it may have moved across its chord, pixels
     * @param alongPx how far along it: a line looks much the same where it is slid along itself
     */
    Polyline moved(Polyline line, double acrossPx, double alongPx) {
        double step = Math.max(COARSE_PX, acrossPx / MOST_STEPS);
        double bend = MOST_BEND * line.length();
        Polyline near =
                best(line, new Reach(acrossPx, alongPx, step, MOST_TURN, COARSE_TURN, bend, bend / 2, FEW_SAMPLES));
        if (step > COARSE_PX) {
            double along = Math.min(step, alongPx);
            near = best(
                    near,
                    new Reach(step, along, COARSE_PX, COARSE_TURN, COARSE_TURN / 2, bend / 2, bend / 4, FEW_SAMPLES));
        }
        near = best(
                near,
                new Reach(
                        COARSE_PX,
                        COARSE_PX,
                        COARSE_PX / 2,
                        COARSE_TURN,
                        COARSE_TURN / 2,
                        bend / 4,
                        bend / 4,
                        SAMPLES));
        double fine = COARSE_PX / 2;
        return best(
                near, new Reach(fine, fine, fine / 2, COARSE_TURN / 2, COARSE_TURN / 4, bend / 8, bend / 8, SAMPLES));
    }

    /**
     * How far a line is moved and in what steps.
     *
     * @param across of its chord, pixels
     * @param along its chord, pixels
     * @param step of both, pixels
     * @param turn about its middle, radians
     * @param turnStep radians
     * @param bend of its end against the direction in which it starts, pixels
     * @param bendStep pixels
     * @param samples along the line at which the picture is asked
     */
    private record Reach(
            double across,
            double along,
            double step,
            double turn,
            double turnStep,
            double bend,
            double bendStep,
            int samples) {}

    private Polyline best(Polyline line, Reach reach) {
        Polyline best = line;
        double most = Double.NEGATIVE_INFINITY;
        int bends = (int) Math.round(reach.bend / reach.bendStep);
        int turns = (int) Math.round(reach.turn / reach.turnStep);
        for (int b = -bends; b <= bends; b++) {
            Polyline bent = bent(line, b * reach.bendStep);
            double cost = SHAPE_COST * Math.abs(b) / bends;
            for (int r = -turns; r <= turns; r++) {
                Polyline turned = turned(bent, r * reach.turnStep);
                Shifted shifted = shifted(turned, reach, cost + SHIFT_COST * Math.abs(r) / turns);
                if (shifted.worth > most) {
                    most = shifted.worth;
                    best = shifted.line;
                }
            }
        }
        return best;
    }

    private record Shifted(Polyline line, double worth) {}

    private Shifted shifted(Polyline line, Reach reach, double cost) {
        Polyline best = line;
        double most = Double.NEGATIVE_INFINITY;
        Point chord = line.last().minus(line.first());
        Point along = chord.times(1 / chord.norm());
        Point across = new Point(-along.y(), along.x());
        double farthest = Math.max(reach.across, reach.along);
        int aside = (int) Math.ceil(reach.across / reach.step);
        int on = (int) Math.ceil(reach.along / reach.step);
        for (int y = -aside; y <= aside; y++) {
            for (int x = -on; x <= on; x++) {
                Point shift = along.times(x * reach.step).plus(across.times(y * reach.step));
                Polyline candidate = line.map(shift::plus);
                double goesOn = Math.max(0, mean(candidate, BEYOND_FROM, BEYOND_TO, reach.samples / LINE_TO_BEYOND));
                double worth = strength(candidate) - cost - SHIFT_COST * shift.norm() / farthest - BEYOND_COST * goesOn;
                if (worth > most) {
                    most = worth;
                    best = candidate;
                }
            }
        }
        return new Shifted(best, most);
    }

    /** The line with its end moved across and what lies inside of that moved by ever less, as a thin tip bends most. */
    private static Polyline bent(Polyline line, double px) {
        if (px == 0) {
            return line;
        }
        int n = line.points().size();
        List<Point> points = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            double u = i / (n - 1.0);
            Point t = line.tangentAt(u * line.length());
            points.add(line.at(u * line.length()).plus(new Point(-t.y(), t.x()).times(px * u * u * u)));
        }
        return new Polyline(points).cut(line.length());
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
