package bendline.rod;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * From the arc of a blank to what pulls on its tip: the end force whose elastica lies nearest to the points seen. Where masses
 * along the blank pull too (its weight, its inertia), their load is given and only the tip's force is looked for.
 */
public final class BendReader {

    /** By how much an arc may reach beyond the blank: what reading a length from a picture can be wrong by. */
    private static final double TOO_LONG = 1.04;

    private static final double SLOPE_STEP = 1e-4;

    /** A pull that no rod in anybody's hands bears, in units of the root's EI/L²: keeps what is not seen finite. */
    private static final double BEYOND_ANY = 30;

    /** A fit that leaves no more than this over, in stated uncertainties, is not looked for from elsewhere. */
    private static final double FITS = 2;

    private static final double[] SIZES = {2, 0.5, 1, 4};

    private static final double[] AHEAD = {0.5, 1.2, 2};

    private static final double LEAST_TURN = 0.05;

    private final Blank blank;
    private final Bending bending;

    /** Reads arcs of one blank. Not for several threads at once. */
    public BendReader(Blank blank) {
        this.blank = blank;
        this.bending = new Bending(blank);
    }

    /**
     * What is known besides the arc.
     *
     * @param body force per length along the blank, N/m, see {@link Load}; empty for none
     * @param direction direction of the tip's force, radians; null where nothing tells
     * @param directionSd its 68 % uncertainty, radians
     * @param near a reading of a like arc, to start from; null for none
     */
    public record Hints(
            List<Point> body,
            @Nullable Double direction,
            double directionSd,
            @Nullable BendReading near) {

        /** Nothing is known. */
        public static final Hints NONE = new Hints(List.of(), null, Double.NaN, null);
    }

    /** Reads one arc; what can't be read is told as such, never thrown. */
    public BendReading read(TracedArc arc, Hints hints) {
        String trouble = trouble(arc);
        if (trouble != null) {
            return BendReading.nothing(trouble);
        }
        double unit = blank.stiffnessNm2() / (blank.lengthM() * blank.lengthM());
        BendReading best = from(start(arc, hints, unit), arc, hints, unit);
        for (double[] start : others(arc, hints, unit)) {
            if (best.misfit() <= FITS) {
                break;
            }
            BendReading other = from(start, arc, hints, unit);
            if (other.why().isEmpty() && !(best.misfit() <= other.misfit())) {
                best = other;
            }
        }
        return best;
    }

    private BendReading from(double[] start, TracedArc arc, Hints hints, double unit) {
        Model model = new Model(arc, hints, unit);
        double[] steps = {SLOPE_STEP, SLOPE_STEP, SLOPE_STEP, SLOPE_STEP, SLOPE_STEP};
        try {
            ArcFit.Fitted fit = ArcFit.of(model::residuals, start, steps);
            return fit == null ? BendReading.nothing("no bent shape fits the arc") : model.reading(fit);
        } catch (BendException e) {
            return BendReading.nothing("no bent shape fits the arc: " + e.getMessage());
        }
    }

    /**
     * Where else to begin: with pulls about as strong as turn a uniform beam's end as far as this one is turned, across its root or
     * ahead. A strongly bent blank has several balances under one pull, and a fit that begins far from it can end on a wrong one.
     * After a like arc was read its shape alone is believed.
     */
    private static List<double[]> others(TracedArc arc, Hints hints, double unit) {
        if (hints.near() != null) {
            return List.of();
        }
        double[] straight = start(arc, Hints.NONE, unit);
        double turned = turned(arc);
        List<double[]> out = new ArrayList<>();
        for (double size : SIZES) {
            for (double ahead : AHEAD) {
                Point pull = Point.direction(straight[2] + Math.signum(turned) * ahead)
                        .times(Math.max(LEAST_TURN, size * Math.abs(turned)));
                out.add(new double[] {pull.x(), pull.y(), straight[2], straight[3], straight[4]});
            }
        }
        return out;
    }

    /** By how much the arc's end points elsewhere than its root, radians. */
    private static double turned(TracedArc arc) {
        double sum = 0;
        for (int i = 0; i + 2 < arc.size(); i++) {
            Point now = arc.points().get(i + 1).minus(arc.points().get(i));
            Point next = arc.points().get(i + 2).minus(arc.points().get(i + 1));
            sum += Math.atan2(now.cross(next), now.dot(next));
        }
        return sum;
    }

    private @Nullable String trouble(TracedArc arc) {
        if (arc.size() < TracedArc.FEWEST) {
            return "only " + arc.size() + " points of the blank are known; " + TracedArc.FEWEST + " are needed";
        }
        if (arc.reach() > TOO_LONG * blank.lengthM()) {
            return String.format(
                    java.util.Locale.ROOT,
                    "the arc is longer than the rod: %.2f m against %.2f m; check the rod's length",
                    arc.reach(),
                    blank.lengthM());
        }
        for (Point p : arc.points()) {
            if (!Double.isFinite(p.x()) || !Double.isFinite(p.y())) {
                return "a point of the arc is not a number";
            }
        }
        return null;
    }

    private static double[] start(TracedArc arc, Hints hints, double unit) {
        BendReading near = hints.near();
        Point p = arc.points().get(0);
        int third = Math.max(1, arc.size() / 4);
        double angle = arc.points().get(third).minus(p).angle();
        if (near != null && near.shape() != null && near.force() != null) {
            double held = near.shape().angle()[0];
            double turns = Math.IEEEremainder(angle - held, 2 * Math.PI);
            Point f = near.force();
            return new double[] {f.x() / unit, f.y() / unit, held + turns, p.x(), p.y()};
        }
        // Small deflection of a uniform beam, αL/3, towards the side on which the last point lies.
        Point last = arc.points().get(arc.size() - 1).minus(p);
        Point across = Point.direction(angle + Math.PI / 2);
        double side = Math.max(-0.5, Math.min(0.5, across.dot(last) / Math.max(1e-9, last.norm())));
        return new double[] {across.x() * side, across.y() * side, angle, p.x(), p.y()};
    }

    /** Parameters: force in units of EI/L², butt angle, place of the root. */
    private final class Model {

        private final TracedArc arc;
        private final Hints hints;
        private final double unit;
        private @Nullable BlankShape last;

        Model(TracedArc arc, Hints hints, double unit) {
            this.arc = arc;
            this.hints = hints;
            this.unit = unit;
        }

        BlankShape shape(double[] p) {
            Load load = new Load(new Point(p[0] * unit, p[1] * unit), hints.body());
            BlankShape shape = last == null ? bending.under(p[2], load) : bending.under(p[2], load, last);
            last = shape;
            return shape;
        }

        double[] residuals(double[] p) {
            BlankShape shape = shape(p);
            int n = arc.size();
            double[] r = new double[2 * n + 3];
            Point root = new Point(p[3], p[4]);
            for (int i = 0; i < n; i++) {
                Point off = arc.points()
                        .get(i)
                        .minus(shape.at(Math.min(arc.along()[i], blank.lengthM()))
                                .plus(root));
                Point along = arc.direction(i);
                r[2 * i] = along.cross(off) / arc.acrossSd();
                r[2 * i + 1] = along.dot(off) / arc.alongSd();
            }
            r[2 * n] = p[0] / BEYOND_ANY;
            r[2 * n + 1] = p[1] / BEYOND_ANY;
            r[2 * n + 2] = aside(p);
            return r;
        }

        /** How far the force points from where it is said to, each radian as far as the force is large; it must not push. */
        private double aside(double[] p) {
            Double direction = hints.direction();
            if (direction == null) {
                return 0;
            }
            Point u = Point.direction(direction);
            Point f = new Point(p[0], p[1]);
            double size = Math.max(0.02, f.norm());
            return Math.IEEEremainder(Math.atan2(u.cross(f), u.dot(f)), 2 * Math.PI)
                    / hints.directionSd()
                    * Math.min(1, size);
        }

        BendReading reading(ArcFit.Fitted fit) {
            double[] p = fit.parameters();
            BlankShape shape = shape(p);
            int free = Math.max(1, 2 * arc.size() - p.length);
            // Few points say little about their own scatter: the factor keeps five points from a narrow interval.
            double few = 1 + 8.0 / (arc.size() * arc.size());
            double wide = few * few * Math.max(1, fit.chiSquare() / free);
            double[][] c = fit.covariance();
            double xx = wide * c[0][0] * unit * unit;
            double yy = wide * c[1][1] * unit * unit;
            double xy = wide * c[0][1] * unit * unit;
            Point f = new Point(p[0] * unit, p[1] * unit);
            return new BendReading(
                    shape,
                    new Point(p[3], p[4]),
                    f,
                    new double[] {xx, xy, yy},
                    energySd(p, c, wide, shape.energyJ()),
                    Math.sqrt(fit.chiSquare() / free),
                    blank.stiffnessRelativeSd(),
                    "");
        }

        private double energySd(double[] p, double[][] c, double wide, double energy) {
            double[] slope = new double[3];
            for (int k = 0; k < 3; k++) {
                double[] q = p.clone();
                q[k] += 1e-3;
                slope[k] = (shape(q).energyJ() - energy) / 1e-3;
            }
            double sum = 0;
            for (int i = 0; i < 3; i++) {
                for (int k = 0; k < 3; k++) {
                    sum += slope[i] * slope[k] * c[i][k];
                }
            }
            return Math.sqrt(Math.max(0, wide * sum));
        }
    }
}
