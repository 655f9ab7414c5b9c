package bendline.flight;

/**
 * Setting the clip by wraps of line round two sticks.
 *
 * @param spacingM between the sticks, one way; 12 ft is 3.6576 m
 */
public record Wraps(double spacingM) {

    /** What a sensible distance needs at most. */
    private static final double FARTHEST_M = 300;

    /** Checks the range. */
    public Wraps {
        Amounts.check("spacing of the sticks", spacingM, 0.5, 10, "m");
    }

    /** A length as whole wraps and what is left over. */
    public Count of(double metres) {
        Amounts.check("distance", metres, 0.5, FARTHEST_M, "m");
        int whole = (int) Math.floor(metres / spacingM + 1e-9);
        return new Count(whole, Math.max(0, metres - whole * spacingM));
    }

    /** Metres in so many wraps. */
    public double metres(double wraps) {
        Amounts.check("wraps", wraps, 0, FARTHEST_M / spacingM, "");
        return wraps * spacingM;
    }

    /**
     * Wraps.
     *
     * @param whole stick to stick
     * @param restM left over, less than the spacing
     */
    public record Count(int whole, double restM) {}
}
