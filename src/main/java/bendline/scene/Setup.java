package bendline.scene;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the user can tell us. Every part is optional (null); what is missing is estimated and said to be estimated, or
 * the measure that needs it is "cannot tell".
 *
 * @param rodLengthM length of the whole rod, butt cap to tip, metres, 1 to 8
 * @param freeLengthM upper hand to tip along the blank, metres
 * @param dropM tip to rig before the cast, metres
 * @param rigMassKg mass of the rig as cast, kilograms
 * @param castsTo which way the cast goes in the picture
 * @param slowMotionFactor capture rate over stored rate
 * @param marks points and moments the user gave on frames; empty for none
 * @param conditions rig, tackle, wind and how far it went
 * @param blank what is known of the rod's stiffness
 */
public record Setup(
        @Nullable Double rodLengthM,
        @Nullable Double freeLengthM,
        @Nullable Double dropM,
        @Nullable Double rigMassKg,
        @Nullable Side castsTo,
        @Nullable Double slowMotionFactor,
        List<Mark> marks,
        Conditions conditions,
        @Nullable BlankFacts blank) {

    /** Side of the picture. */
    public enum Side {
        LEFT,
        RIGHT
    }

    /**
     * Part of a rod that lies behind the upper hand. Common practice, no source: reel seats of two-handed feeder and beach rods
     * of 3.3 to 4.2 m sit 0.55 to 0.75 m from the butt cap.
     */
    public static final double HANDLE_SHARE = 0.165;

    /** Nothing is known. */
    public static final Setup NONE = new Setup(null, null, null, null, null, null, List.of());

    /** With nothing known of rig, tackle and wind but the rig's mass, nor of the rod's stiffness. */
    public Setup(
            @Nullable Double rodLengthM,
            @Nullable Double freeLengthM,
            @Nullable Double dropM,
            @Nullable Double rigMassKg,
            @Nullable Side castsTo,
            @Nullable Double slowMotionFactor,
            List<Mark> marks) {
        this(rodLengthM, freeLengthM, dropM, rigMassKg, castsTo, slowMotionFactor, marks, Conditions.NONE, null);
    }

    /** With nothing known of the rod's stiffness. */
    public Setup(
            @Nullable Double rodLengthM,
            @Nullable Double freeLengthM,
            @Nullable Double dropM,
            @Nullable Double rigMassKg,
            @Nullable Side castsTo,
            @Nullable Double slowMotionFactor,
            List<Mark> marks,
            Conditions conditions) {
        this(rodLengthM, freeLengthM, dropM, rigMassKg, castsTo, slowMotionFactor, marks, conditions, null);
    }

    /** The same with what is known of the rod's stiffness. */
    public Setup withBlank(@Nullable BlankFacts facts) {
        return new Setup(
                rodLengthM, freeLengthM, dropM, rigMassKg, castsTo, slowMotionFactor, marks, conditions, facts);
    }

    /** Checks ranges. */
    public Setup {
        check("rod length", rodLengthM, 1, 8, "m");
        check("free length", freeLengthM, 0.5, 8, "m");
        check("drop", dropM, 0.05, 8, "m");
        check("rig mass", rigMassKg, 0.001, 1, "kg");
        check("slow-motion factor", slowMotionFactor, 0.05, 100, "");
        if (rodLengthM != null && freeLengthM != null && freeLengthM > rodLengthM) {
            throw new IllegalArgumentException(
                    "free length " + freeLengthM + " m is longer than the rod, " + rodLengthM + " m");
        }
        agree(rigMassKg, conditions.rig().loadedKg());
        marks = List.copyOf(marks);
    }

    /** The same with another mass of the rig as cast, kilograms. */
    public Setup withMass(@Nullable Double massKg) {
        return new Setup(rodLengthM, freeLengthM, dropM, massKg, castsTo, slowMotionFactor, marks, conditions, blank);
    }

    /** The same with other conditions. */
    public Setup withConditions(Conditions others) {
        return new Setup(rodLengthM, freeLengthM, dropM, rigMassKg, castsTo, slowMotionFactor, marks, others, blank);
    }

    /** The same with other marks. */
    public Setup withMarks(List<Mark> others) {
        return new Setup(
                rodLengthM, freeLengthM, dropM, rigMassKg, castsTo, slowMotionFactor, others, conditions, blank);
    }

    /** Mass of the rig as cast: as told, else empty and bait together; null where neither is known. */
    public @Nullable Double castMassKg() {
        return rigMassKg != null ? rigMassKg : conditions.rig().loadedKg();
    }

    /** Tip to rig over upper hand to tip, as far as it was told; NaN where it was not. */
    public double dropShare() {
        if (dropM == null || (freeLengthM == null && rodLengthM == null)) {
            return Double.NaN;
        }
        return dropM / (freeLengthM != null ? freeLengthM : (1 - HANDLE_SHARE) * rodLengthM);
    }

    private static void agree(@Nullable Double asCast, @Nullable Double loaded) {
        if (asCast != null && loaded != null && Math.abs(asCast - loaded) > 0.1 * loaded) {
            throw new IllegalArgumentException("rig mass " + asCast + " kg does not fit the empty rig and its bait, "
                    + loaded + " kg together; give one or the other");
        }
    }

    private static void check(String what, @Nullable Double value, double min, double max, String unit) {
        if (value != null && !(value >= min && value <= max)) {
            throw new IllegalArgumentException(
                    (what + " " + value + " " + unit).strip() + " is outside " + min + " to " + max + " " + unit);
        }
    }
}
