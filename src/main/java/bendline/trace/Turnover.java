package bendline.trace;

/**
 * Where a line along the rod turns from darker than what lies behind it to brighter, or the other way round: where the paint of a light tip
 * begins, or at the tip of a dark blank the line that leads on from it.
 */
final class Turnover {

    /** What is asked on either side, pixels: so much inside, and outside so much at least and at most. */
    private static final double INSIDE_PX = 30;

    private static final double LEAST_OUTSIDE_PX = 7.5;

    private static final double MOST_OUTSIDE_PX = 30;

    /** Share of the line, from inside, in which it can't be. */
    private static final double INNER = 0.6;

    /** Strength of an empty place, noise units, and how many times of it a station counts at most. */
    private static final double LEVEL = 3;

    private static final double MOST = 2;

    /** Least mean of what counts, inside and outside. */
    private static final double CLEAR = 1.3;

    private static final double SEEN = 0.9;

    private Turnover() {}

    /**
     * @param signed strength by station, noise units, negative where darker
     * @param last station at which the line ends
     * @return first station that has turned; -1 where none has
     */
    static int station(double[] signed, int last) {
        double[] sum = new double[signed.length + 1];
        for (int i = 0; i < signed.length; i++) {
            sum[i + 1] = sum[i] + Math.max(-MOST, Math.min(MOST, signed[i] / LEVEL));
        }
        int inside = (int) (INSIDE_PX / Strip.STEP_PX);
        int least = (int) (LEAST_OUTSIDE_PX / Strip.STEP_PX);
        int most = (int) (MOST_OUTSIDE_PX / Strip.STEP_PX);
        int best = -1;
        double clearest = 0;
        for (int k = Math.max(inside, (int) (INNER * last)); k <= Math.min(last + 2, signed.length - least); k++) {
            double in = (sum[k] - sum[k - inside]) / inside;
            for (int n = least; n <= most && k + n <= signed.length; n += 5) {
                double out = (sum[k + n] - sum[k]) / n;
                if (in * out < 0 && Math.abs(in) >= CLEAR && Math.abs(out) >= SEEN) {
                    double clear = Math.abs(in - out) * Math.sqrt((double) n * inside / (n + inside));
                    if (clear > clearest) {
                        clearest = clear;
                        best = k;
                    }
                }
            }
        }
        return best;
    }
}
