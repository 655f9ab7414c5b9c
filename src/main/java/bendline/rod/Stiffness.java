package bendline.rod;

import bendline.geometry.Point;
import java.util.Locale;

/** How stiff a blank is, from what people know of it or can measure. Shapes of tapers are taken as given. */
public final class Stiffness {

    /** Standard gravity, m/s². */
    public static final double GRAVITY = 9.80665;

    /**
     * Where the eye calls a tip square to the butt. Under a hanging weight no tip ever turns through the whole right angle
     * (the elastica reaches it only under an endless load), so the test is read short of it.
     */
    private static final double SQUARE_DEG = 80;

    /** How far people differ in that. Common practice, no source. */
    private static final double SQUARE_SD_DEG = 3;

    /** By which factor the tip's share of the stiffness of a rod that was not measured may differ from the one assumed. */
    private static final double TAPER_FACTOR = 2;

    /**
     * Test curve over casting weight: a rod of 1 lb test curve casts an ounce. Traditional rule, as anglers quote it; a home
     * test of six rods found 17 to 20.
     */
    private static final double TEST_CURVES_IN_CASTING_WEIGHT = 16;

    private static final double RULE_SD = 0.25;

    private Stiffness() {}

    /**
     * A stiffness that was found.
     *
     * @param blank with it
     * @param basis what it rests on
     */
    public record Found(Blank blank, String basis) {}

    /**
     * From the test curve: the weight that pulls the tip square to the butt.
     *
     * @param like length and taper
     * @param testCurveKg kg, 0.05 to 10
     * @param relativeSd 68 % uncertainty of the weight itself, over its value
     */
    public static Found fromTestCurve(Blank like, double testCurveKg, double relativeSd) {
        Ranges.check("test curve", testCurveKg, 0.05, 10, "kg");
        double load = squareLoad(like.taper(), SQUARE_DEG);
        double eye = Math.log(squareLoad(like.taper(), SQUARE_DEG + SQUARE_SD_DEG)
                        / squareLoad(like.taper(), SQUARE_DEG - SQUARE_SD_DEG))
                / 2;
        double ei = testCurveKg * GRAVITY * like.lengthM() * like.lengthM() / load;
        double tip = like.taper().stiffnessAt(1);
        double taper = Math.log(squareLoad(like.taper().withTipStiffness(Math.min(0.9, tip * TAPER_FACTOR)), SQUARE_DEG)
                        / squareLoad(like.taper().withTipStiffness(tip / TAPER_FACTOR), SQUARE_DEG))
                / 2;
        double sd = Math.sqrt(relativeSd * relativeSd + eye * eye + taper * taper);
        return new Found(
                like.withStiffness(ei, sd),
                String.format(Locale.ROOT, "stiffness from a test curve of %.2f kg, ± %.0f %%", testCurveKg, 100 * sd));
    }

    /** From the weight a rod is made to cast, by the old rule that its test curve is sixteen times that. */
    public static Found fromCastingWeight(Blank like, double castingKg) {
        Ranges.check("casting weight", castingKg, 0.003, 0.6, "kg");
        Blank b = fromTestCurve(like, castingKg * TEST_CURVES_IN_CASTING_WEIGHT, RULE_SD)
                .blank();
        return new Found(
                b,
                String.format(
                        Locale.ROOT,
                        "stiffness from a casting weight of %.0f g by the rule of sixteen, ± %.0f %%",
                        1000 * castingKg,
                        100 * b.stiffnessRelativeSd()));
    }

    /** The weight that pulls a blank's tip square to its butt, kg, as the eye reads it. */
    public static double testCurveKg(Blank blank) {
        return squareLoad(blank.taper(), SQUARE_DEG)
                * blank.stiffnessNm2()
                / (blank.lengthM() * blank.lengthM())
                / GRAVITY;
    }

    /**
     * From the ring after the release: the blank's own mass swings on its own stiffness, so the frequency tells the one over the
     * other and the stiffness is as sure as the mass.
     *
     * @param like length, taper and mass
     * @param hz lowest frequency
     * @param hzSd its 68 % uncertainty
     * @param tipMassKg what hangs on the tip, line and tip ring, kg
     */
    public static Found fromRing(Blank like, double hz, double hzSd, double tipMassKg) {
        Ranges.check("ring", hz, 0.2, 60, "Hz");
        double wanted = hz / new NaturalFrequency(like, tipMassKg).hz(1);
        double sd = Math.hypot(2 * hzSd / hz, like.massRelativeSd());
        return new Found(
                like.withStiffness(like.stiffnessNm2() * wanted * wanted, sd),
                String.format(
                        Locale.ROOT,
                        "stiffness from a ring of %.2f Hz and a guessed mass of the blank, ± %.0f %%",
                        hz,
                        100 * sd));
    }

    /** Load in units of the root's EI/L² at which the tip has turned through so many degrees. */
    private static double squareLoad(Taper taper, double degrees) {
        Bending bending = new Bending(Blank.massless(1, 1, taper));
        double low = 0;
        double high = 1;
        while (turn(bending, high) < degrees) {
            low = high;
            high *= 2;
        }
        for (int i = 0; i < 40; i++) {
            double mid = 0.5 * (low + high);
            boolean less = turn(bending, mid) < degrees;
            low = less ? mid : low;
            high = less ? high : mid;
        }
        return 0.5 * (low + high);
    }

    private static double turn(Bending bending, double load) {
        return Math.toDegrees(bending.under(0, Load.atTip(new Point(0, load))).tipTurn());
    }
}
