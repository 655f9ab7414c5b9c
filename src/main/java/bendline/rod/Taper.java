package bendline.rod;

/**
 * How a blank thins from its root to its tip. The diameter falls in a straight line; bending stiffness and mass per length
 * follow powers of it. A solid cone has the powers 4 and 2, a tube whose wall thins with its diameter the same, a tube of even
 * wall 3 and 1 (second moments and areas of circles and rings, textbook).
 *
 * @param tipShare diameter at the tip over that at the root, 0.001 to 1; only a shape, not a thing to measure with a caliper
 * @param stiffnessPower how bending stiffness goes with the diameter, 0 to 5
 * @param massPower how mass per length goes with the diameter, 0 to 3
 */
public record Taper(double tipShare, double stiffnessPower, double massPower) {

    /** The same section all along. */
    public static final Taper UNIFORM = new Taper(1, 4, 2);

    /** Checks ranges. */
    public Taper {
        Ranges.check("tip share", tipShare, 0.001, 1, "");
        Ranges.check("stiffness power", stiffnessPower, 0, 5, "");
        Ranges.check("mass power", massPower, 0, 3, "");
    }

    /** A solid cone cut off at a tip diameter of so many parts of the root's. */
    public static Taper cone(double tipShare) {
        return new Taper(tipShare, 4, 2);
    }

    /** Diameter over the root's at a share of the length, 0 at the root, 1 at the tip. */
    public double diameterAt(double share) {
        return 1 - (1 - tipShare) * Math.max(0, Math.min(1, share));
    }

    /** Bending stiffness over the root's. */
    public double stiffnessAt(double share) {
        return Math.pow(diameterAt(share), stiffnessPower);
    }

    /** Mass per length over the root's. */
    public double massAt(double share) {
        return Math.pow(diameterAt(share), massPower);
    }

    /** The same blank with another tip: the share of the stiffness that is left at the tip. */
    public Taper withTipStiffness(double share) {
        return new Taper(Math.pow(share, 1 / stiffnessPower), stiffnessPower, massPower);
    }

    /** The part beyond a share of the length. */
    Taper beyond(double share) {
        return new Taper(tipShare / diameterAt(share), stiffnessPower, massPower);
    }
}
