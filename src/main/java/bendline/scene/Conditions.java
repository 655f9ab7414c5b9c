package bendline.scene;

import org.jspecify.annotations.Nullable;

/**
 * What was cast with and in what: rig, tackle, wind and how far it went. Every part is optional (null). SI.
 *
 * @param rig what was cast
 * @param tackle rod, line and leader
 * @param wind on the bank
 * @param outcome where it was cast from and how far it went
 */
public record Conditions(Rig rig, Tackle tackle, Wind wind, Outcome outcome) {

    /** Nothing is known. */
    public static final Conditions NONE = new Conditions(Rig.NONE, Tackle.NONE, Wind.NONE, Outcome.NONE);

    /** What kind of rig flies. */
    public enum RigType {
        /** A feeder with an open mouth, which turns over and over. */
        FEEDER_OPEN,
        /** A feeder plugged with bait, which turns over and over. */
        FEEDER_LOADED,
        /** A feeder held straight by a stem or a tail. */
        FEEDER_STEM,
        /** A streamlined lead. */
        BOMB
    }

    /** What the line is made of. */
    public enum LineKind {
        NYLON,
        BRAID
    }

    /**
     * What was cast.
     *
     * @param type kind of rig
     * @param emptyKg feeder or lead without bait, 0.005 to 0.5
     * @param baitKg what was put in, 0 to 0.3
     * @param diameterM of the feeder's body, 0.01 to 0.08
     * @param lengthM of the feeder's body, 0.01 to 0.15
     */
    public record Rig(
            @Nullable RigType type,
            @Nullable Double emptyKg,
            @Nullable Double baitKg,
            @Nullable Double diameterM,
            @Nullable Double lengthM) {

        /** Nothing is known. */
        public static final Rig NONE = new Rig(null, null, null, null, null);

        /** Checks ranges. */
        public Rig {
            Told.check("empty rig", emptyKg, 0.005, 0.5, "kg");
            Told.check("bait", baitKg, 0, 0.3, "kg");
            Told.check("feeder diameter", diameterM, 0.01, 0.08, "m");
            Told.check("feeder length", lengthM, 0.01, 0.15, "m");
        }

        /** Empty plus bait, or null; no bait is taken as none where the empty weight is known. */
        public @Nullable Double loadedKg() {
            return emptyKg == null ? null : emptyKg + (baitKg == null ? 0 : baitKg);
        }
    }

    /**
     * Rod, line and leader.
     *
     * @param castingKg most that the rod is made to cast, 0.01 to 0.5
     * @param lineKind what the line is made of
     * @param lineM diameter of the main line, 0.05 to 0.6 mm
     * @param lineN breaking strain of the main line, 5 to 500
     * @param leaderN breaking strain of the leader, 5 to 1000
     * @param loss at spool, lip and rings, as fitted before, 0 to 60
     * @param lossPlusMinus 68 %
     */
    public record Tackle(
            @Nullable Double castingKg,
            @Nullable LineKind lineKind,
            @Nullable Double lineM,
            @Nullable Double lineN,
            @Nullable Double leaderN,
            @Nullable Double loss,
            @Nullable Double lossPlusMinus) {

        /** Nothing is known. */
        public static final Tackle NONE = new Tackle(null, null, null, null, null, null, null);

        /** Checks ranges. */
        public Tackle {
            Told.check("rod's casting weight", castingKg, 0.01, 0.5, "kg");
            Told.check("line diameter", lineM, 5e-5, 6e-4, "m");
            Told.check("line strength", lineN, 5, 500, "N");
            Told.check("leader strength", leaderN, 5, 1000, "N");
            Told.check("line loss", loss, 0, 60, "");
            Told.check("line loss's uncertainty", lossPlusMinus, 0, 30, "");
        }
    }

    /**
     * Wind on the bank.
     *
     * @param speedMps 0 to 25
     * @param fromDeg 0 straight into the face, 90 from the right, 180 from behind, 270 from the left
     * @param heightM where it was measured or is told for, 1 to 20: 2 for a hand-held meter, 10 for a forecast
     */
    public record Wind(
            @Nullable Double speedMps,
            @Nullable Double fromDeg,
            @Nullable Double heightM) {

        /** Nothing is known. */
        public static final Wind NONE = new Wind(null, null, null);

        /** Checks ranges. */
        public Wind {
            Told.check("wind", speedMps, 0, 25, "m/s");
            Told.check("wind direction", fromDeg, 0, 360, "degrees");
            Told.check("height of the wind", heightM, 1, 20, "m");
            if (speedMps == null && (fromDeg != null || heightM != null)) {
                throw new IllegalArgumentException("wind's direction or height says nothing without its speed");
            }
        }
    }

    /**
     * Where it was cast from and how far it went.
     *
     * @param tipHeightM rod tip above the water at the release, 0.3 to 30
     * @param clipM line to the clip, from the rod tip, 5 to 300
     * @param measuredM where the rig landed, level, from under the rod tip, 3 to 300
     * @param measuredPlusMinusM how well that is known, 68 %
     */
    public record Outcome(
            @Nullable Double tipHeightM,
            @Nullable Double clipM,
            @Nullable Double measuredM,
            @Nullable Double measuredPlusMinusM) {

        /** Nothing is known. */
        public static final Outcome NONE = new Outcome(null, null, null, null);

        /** Checks ranges. */
        public Outcome {
            Told.check("height of the tip", tipHeightM, 0.3, 30, "m");
            Told.check("clip", clipM, 5, 300, "m");
            Told.check("measured distance", measuredM, 3, 300, "m");
            Told.check("measured distance's uncertainty", measuredPlusMinusM, 0.01, 50, "m");
        }
    }
}
