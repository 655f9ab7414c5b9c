package bendline.compare;

import java.util.List;

/**
 * The measures on which a comparison gives a verdict. They are few and named beforehand: with every further measure looked
 * at, a difference must be plainer to be told from chance.
 */
public final class Family {

    /**
     * What the faults and the distance rest on: how the backswing stands to the forward stroke, whether the rig settled, how deep
     * and how early the blank loads, where the line goes, how the rod is held, how fast the rig leaves.
     */
    public static final List<String> USUAL = List.of(
            Cast.DISTANCE,
            "tempo",
            "settleSeconds",
            "compression",
            "halfLoad",
            "buttAngleAtReleaseDeg",
            "fallAt250msDeg",
            "launchSpeed");

    private Family() {}

    /**
     * A change worth having, in the measure's unit: what a coach would call a step. Common practice, no source.
     *
     * @return NaN where nothing is agreed
     */
    public static double step(String measure, String unit) {
        return switch (measure) {
            case Cast.DISTANCE -> 3;
            case "tempo" -> 0.7;
            case "settleSeconds", "backswingSeconds", "dropStartsAfterRelease" -> 0.1;
            case "forwardSeconds" -> 0.04;
            case "compression", "compressionAtQuarterSweep", "compressionAtHalfSweep" -> 0.02;
            case "earlyLoad", "halfLoad", "loadSweepShare" -> 0.15;
            case "fallAt150msDeg", "fallAt250msDeg", "fallAt500msDeg" -> 8;
            case "peakTipSpeed", "launchSpeed" -> 1.5;
            default -> unit.equals("deg") ? 5 : Double.NaN;
        };
    }
}
