package bendline.flight;

/**
 * A fixed spool, which empties as the line runs off.
 *
 * @param fullDiameterM of the wound line before the cast
 * @param traverseM length of the winding along the axis
 * @param underLipM how far the full winding lies under the lip
 */
public record Spool(double fullDiameterM, double traverseM, double underLipM) {

    /** A big distance reel, filled well; common practice, no source. */
    public static final Spool USUAL = new Spool(0.065, 0.03, 0.0015);

    /** Share of the winding that is line; round threads lie at most in 0.91. */
    private static final double PACKING = 0.80;

    /** Line on a polished lip: a rope round a post. Common practice, no source: 0.2 to 0.3. */
    private static final double FRICTION = 0.25;

    /** Checks ranges. */
    public Spool {
        Amounts.check("spool diameter", fullDiameterM, 0.02, 0.15, "m");
        Amounts.check("spool length", traverseM, 0.005, 0.08, "m");
        Amounts.check("winding under the lip", underLipM, 0, 0.02, "m");
    }

    /** Diameter of the winding when so much line is off, m; never under a third of the full one, where the core is. */
    public double diameterM(double outM, double lineDiameterM) {
        double taken = outM * lineDiameterM * lineDiameterM / (PACKING * traverseM);
        double least = fullDiameterM / 3;
        return Math.sqrt(Math.max(least * least, fullDiameterM * fullDiameterM - taken));
    }

    /** How many times as hard the line drags over the lip as off the full spool: the angle over the lip grows. */
    double lipFactor(double outM, double lineDiameterM) {
        double under = underLipM + 0.5 * (fullDiameterM - diameterM(outM, lineDiameterM));
        return Math.exp(FRICTION * (angle(under) - angle(underLipM)));
    }

    /** Seen from half way down the winding, in and out again. */
    private double angle(double under) {
        return 2 * Math.atan2(under, 0.5 * traverseM);
    }
}
