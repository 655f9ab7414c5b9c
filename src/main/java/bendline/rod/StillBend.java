package bendline.rod;

import bendline.geometry.Point;
import java.util.List;
import java.util.Locale;

/**
 * Stiffness and taper from a still picture of a rod under a known weight: the blank whose elastica under that weight, and its
 * own, lies nearest to the points.
 */
public final class StillBend {

    /** How far the logarithm of the tip's share of the stiffness may lie from the usual one. Common practice, no source. */
    private static final double TAPER_SD = 1.5;

    /** Lengths and the upright in a picture taken by hand: the pull's direction, radians, and the scale. */
    private static final double UPRIGHT_SD = 0.02;

    private static final double SCALE_SD = 0.015;
    private static final double ALIKE = 3;

    /** A bend of fewer uncertainties than this tells no stiffness. */
    private static final double LEAST_CONTRAST = 3;

    private static final String TOO_LITTLE =
            "the rod is bent too little to tell its stiffness; hang a heavier weight on it";

    private static final double STEP = 1e-4;

    private final Blank like;
    private final Point pull;

    /**
     * @param like length, mass and usual taper of the blank; its stiffness is where the search begins
     * @param pull force on the tip, newtons, y up
     */
    public StillBend(Blank like, Point pull) {
        Ranges.check("pull on the tip", pull.norm(), 0.05, 150, "N");
        this.like = like;
        this.pull = pull;
    }

    /**
     * What a picture told.
     *
     * @param blank with its stiffness and taper
     * @param misfitSd what is left over, in the points' uncertainties
     * @param tipTurnDeg by how much the tip was turned
     */
    public record Calibrated(Blank blank, double misfitSd, double tipTurnDeg) {}

    /**
     * Reads a picture.
     *
     * @throws BendException where the points can't tell: too few, longer than the rod, hardly bent
     */
    public Calibrated read(TracedArc arc) {
        check(arc);
        Model model = new Model(arc);
        if (chiOfStraight(arc) < LEAST_CONTRAST * LEAST_CONTRAST * arc.size() / ALIKE) {
            throw new BendException(TOO_LITTLE);
        }
        Point p = arc.points().get(0);
        double angle = arc.points().get(Math.max(1, arc.size() / 4)).minus(p).angle();
        double[] start = {guess(arc, angle), 0, angle, p.x(), p.y()};
        ArcFit.Fitted fit = ArcFit.of(model::residuals, start, new double[] {STEP, STEP, STEP, STEP, STEP});
        if (fit == null) {
            throw new BendException(
                    "no blank of this length fits the points; check the length, the weight and the points");
        }
        int free = Math.max(1, 2 * arc.size() - 4);
        double few = 1 + 8.0 / (arc.size() * arc.size());
        double wide = few * few * ALIKE * Math.max(1, fit.chiSquare() / free);
        double read = Math.sqrt(wide * fit.covariance()[0][0]);
        // The force goes with the square of the lengths, and with what of it lies across the rod.
        double sd = Math.sqrt(read * read + 4 * SCALE_SD * SCALE_SD + UPRIGHT_SD * UPRIGHT_SD);
        if (sd > 1) {
            throw new BendException(TOO_LITTLE);
        }
        Blank found = model.blank(fit.parameters());
        Blank blank = found.withStiffness(found.stiffnessNm2(), sd);
        return new Calibrated(
                blank,
                Math.sqrt(fit.chiSquare() / free),
                Math.toDegrees(Math.abs(model.shape(fit.parameters()).tipTurn())));
    }

    private void check(TracedArc arc) {
        if (arc.size() < TracedArc.FEWEST) {
            throw new BendException("only " + arc.size() + " points were given; give at least " + TracedArc.FEWEST
                    + ", from the hand to the tip, in order");
        }
        if (arc.reach() > 1.04 * like.lengthM() || arc.reach() < 0.8 * like.lengthM()) {
            throw new BendException(String.format(
                    Locale.ROOT,
                    "the points span %.2f m of a rod of %.2f m; give them from the hand to the tip, and the length between"
                            + " those two",
                    arc.reach(),
                    like.lengthM()));
        }
    }

    /** Logarithm of the factor on the stiffness at which a uniform beam of this softness would sag as the points do. */
    private double guess(TracedArc arc, double angle) {
        Point last = arc.points().get(arc.size() - 1).minus(arc.points().get(0));
        double down = Math.abs(Point.direction(angle).cross(last)) / like.lengthM();
        double load = pull.norm() * like.lengthM() * like.lengthM() / Math.max(0.02, Math.min(3, 3 * down));
        return Math.log(load / like.stiffnessNm2()) + 0.7;
    }

    private static double chiOfStraight(TracedArc arc) {
        Point a = arc.points().get(0);
        Point d = arc.points().get(arc.size() - 1).minus(a);
        double sum = 0;
        for (Point p : arc.points()) {
            double off = d.cross(p.minus(a)) / d.norm() / arc.acrossSd();
            sum += off * off;
        }
        return sum;
    }

    /** Parameters: logarithm of stiffness over the start's, of the tip's stiffness over the usual, butt angle, root. */
    private final class Model {

        private final TracedArc arc;

        Model(TracedArc arc) {
            this.arc = arc;
        }

        Blank blank(double[] p) {
            double tip = like.taper().stiffnessAt(1) * Math.exp(p[1]);
            double ei = like.stiffnessNm2() * Math.exp(p[0]);
            if (!(tip < 1 && tip > 1e-5 && ei > 0.01 && ei < 1e5)) {
                throw new BendException("no rod has this taper");
            }
            return like.withTaper(like.taper().withTipStiffness(tip)).withStiffness(ei, 0);
        }

        BlankShape shape(double[] p) {
            Blank b = blank(p);
            return new Bending(b).under(p[2], new Load(pull, weight(b)));
        }

        double[] residuals(double[] p) {
            BlankShape shape = shape(p);
            int n = arc.size();
            double[] r = new double[2 * n + 1];
            Point root = new Point(p[3], p[4]);
            for (int i = 0; i < n; i++) {
                double s = Math.min(arc.along()[i], like.lengthM());
                Point off = arc.points().get(i).minus(shape.at(s).plus(root));
                r[2 * i] = arc.direction(i).cross(off) / arc.acrossSd();
                r[2 * i + 1] = arc.direction(i).dot(off) / arc.alongSd();
            }
            // A weak hold on the taper: it must lead where the points are few and give way where they speak.
            r[2 * n] = p[1] / TAPER_SD;
            return r;
        }
    }

    /** A blank's own weight along it, N/m, at ten steps. */
    public static List<Point> weight(Blank blank) {
        return java.util.stream.IntStream.rangeClosed(0, 10)
                .mapToObj(i -> new Point(0, -Stiffness.GRAVITY * blank.massAt(0.1 * i * blank.lengthM())))
                .toList();
    }
}
