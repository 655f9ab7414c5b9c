package bendline.scene;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the user can tell about how stiff the rod is. Every part is optional (null); the first that is there in the order
 * measured, test curve, blank, casting weight is used.
 *
 * @param testCurveKg weight that pulls the tip square to the butt, kilograms, 0.2 to 4.5
 * @param castingWeightKg weight the rod is made to cast, kilograms, 0.005 to 0.35
 * @param blankId one of the generic blanks
 * @param measured a blank that was measured under a known weight
 */
public record BlankFacts(
        @Nullable Double testCurveKg,
        @Nullable Double castingWeightKg,
        @Nullable String blankId,
        @Nullable Measured measured) {

    private static final double OUNCE_KG = 0.028349523;
    private static final double POUND_KG = 0.45359237;
    private static final double GRAM_KG = 0.001;
    private static final String TEST_CURVE = "test curve";
    private static final String CAST = " (that is a weight to cast: give it as the casting weight)";

    /**
     * The bending part of a rod that was measured.
     *
     * @param stiffnessNm2 bending stiffness where the upper hand holds it, N·m², 5 to 5000
     * @param relativeSd its 68 % uncertainty over the value, above 0 to 1
     * @param tipShare stiffness at the tip over that at the hand, above 0 to 1
     */
    public record Measured(double stiffnessNm2, double relativeSd, double tipShare) {

        /** Checks ranges. */
        public Measured {
            range("bending stiffness", stiffnessNm2, 5, 5000, "N·m²");
            range("uncertainty of the bending stiffness", relativeSd, 1e-6, 1, "");
            range("tip's share of the stiffness", tipShare, 1e-5, 1, "");
        }
    }

    /** Checks ranges; a number out of range that would be right in another unit is answered with that unit. */
    public BlankFacts {
        check(TEST_CURVE, testCurveKg, 0.2, 4.5);
        check("casting weight", castingWeightKg, 0.005, 0.35);
    }

    private static void range(String what, double value, double min, double max, String unit) {
        if (!(value >= min && value <= max)) {
            throw new IllegalArgumentException(
                    (what + " " + value + " " + unit).strip() + " is outside " + min + " to " + max + " " + unit);
        }
    }

    private static void check(String what, @Nullable Double kg, double min, double max) {
        if (kg == null || kg >= min && kg <= max) {
            return;
        }
        throw new IllegalArgumentException(what + " " + number(kg) + " kg is outside " + number(min) + " to "
                + number(max) + " kg" + (cast(what, kg) ? CAST : meant(kg, min, max)));
    }

    /** Both weights stand on rods, and one is sixteen times the other. */
    private static boolean cast(String what, double kg) {
        double grams = kg / GRAM_KG;
        return what.equals(TEST_CURVE) && kg >= 0.02 && kg < 0.2 && Math.abs(grams - Math.rint(grams)) < 1e-6;
    }

    /** A slip of the unit: the number as grams, pounds or ounces, whichever would be in range. */
    private static String meant(double kg, double min, double max) {
        String[] names = {"g", "lb", "oz", "kg"};
        double[] units = {GRAM_KG, POUND_KG, OUNCE_KG, 1};
        for (int given = 3; given >= 0; given--) {
            for (int other = 0; other < 4; other++) {
                double spoken = kg / units[given];
                double then = spoken * units[other];
                boolean round = Math.abs(spoken * 100 - Math.rint(spoken * 100)) < 1e-6;
                if (other != given && round && then >= min && then <= max) {
                    return " (did you mean " + number(spoken) + " " + names[other] + "?)";
                }
            }
        }
        return "";
    }

    private static String number(double value) {
        return new java.math.BigDecimal(String.format(Locale.ROOT, "%.4g", value))
                .stripTrailingZeros()
                .toPlainString();
    }
}
