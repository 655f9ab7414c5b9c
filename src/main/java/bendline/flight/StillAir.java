package bendline.flight;

/** Puts a measured distance on a common footing: how far the same throw would have gone in still air. */
public final class StillAir {

    private static final double SLOWEST = 5;
    private static final double FASTEST = 115;
    private static final int DRAWS = 64;

    private static final Flyer FLYER = Flyer.quick();

    private StillAir() {}

    /**
     * The same throw in still air. For every draw of angle, kit and wind, the speed that explains the measured distance is found and
     * flown again without the wind; so the launch speed need not be known, and what is wrong with the kit's drag nearly cancels.
     *
     * @param shot its speed and clip don't matter
     * @param distanceM where the rig landed, from under the tip, not held by the clip
     * @param plusMinusM how well that is known, 68 %
     */
    public static Answer of(DoubtfulShot shot, double distanceM, double plusMinusM) {
        double[][] draws = Draws.normal(DRAWS);
        double[] out = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            double measured = Math.max(1, distanceM + plusMinusM * draws[i][Draws.OWN]);
            Shot drawn = free(shot.drawn(draws[i]));
            double speed = speed(drawn, measured);
            out[i] = Double.isNaN(speed) ? Double.NaN : fly(drawn.with(Wind.NONE), speed);
        }
        return Answer.of(
                out, "m", "the throw that reached the measured distance in this wind, flown again without wind");
    }

    /** The launch speed that takes a shot so far at its angle, m/s; NaN where none does. */
    public static double speed(Shot shot, double distanceM) {
        Shot free = free(shot);
        return Solve.between(SLOWEST, FASTEST, 1e-3, v -> fly(free, v) - distanceM);
    }

    private static Shot free(Shot shot) {
        return shot.with(shot.tackle().clippedAt(Double.POSITIVE_INFINITY));
    }

    private static double fly(Shot shot, double speed) {
        return FLYER.fly(shot.with(shot.start().atSpeed(speed))).distanceM();
    }
}
