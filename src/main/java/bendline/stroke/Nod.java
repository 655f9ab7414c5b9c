package bendline.stroke;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.IntStream;

/** The tip is pulled when the line comes tight on the clip, seconds after the release. */
final class Nod {

    /** Earliest moment after the release at which a cast worth clipping up for can have come to the clip, real seconds. */
    private static final double EARLIEST_SECONDS = 1.2;

    private static final double LEAST_WATCHED_SECONDS = 0.5;
    private static final double BASELINE_SECONDS = 0.5;
    private static final double LEAST_PULL = Math.toRadians(1.5);
    private static final double STRAYS = 6;

    /** A rod that its hands move bends too: no nod is looked for while the butt turns faster than this. */
    private static final double QUIET_RATE = Math.toRadians(40);

    private Nod() {}

    /**
     * Looks for the pull.
     *
     * @param rod the cast's frames and all that follow it
     * @param rate rate of the butt angle, one entry per frame of {@code rod}
     */
    static Found find(RodSeries rod, double[] rate, double release) {
        double end = rod.time()[rod.size() - 1];
        int[] watched = IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= release + EARLIEST_SECONDS && !Double.isNaN(rod.lag()[i]))
                .toArray();
        if (end < release + EARLIEST_SECONDS + LEAST_WATCHED_SECONDS) {
            return Found.nothing(String.format(
                    Locale.ROOT,
                    "the clip ends %.1f s after the release, before a rig can come to the clip: film on until the line is tight",
                    end - release));
        }
        if (watched.length < 20) {
            return Found.nothing("the tip was not followed for long enough after the release");
        }
        double[] lag = IntStream.of(watched).mapToDouble(i -> rod.lag()[i]).toArray();
        double[] pull = aboveBaseline(rod, watched, lag);
        double scatter = 1.4826 * median(Arrays.stream(pull).map(Math::abs).toArray());
        double limit = Math.max(LEAST_PULL, STRAYS * scatter);
        for (int k = 1; k + 1 < pull.length; k++) {
            boolean quiet = Math.abs(rate[watched[k]]) < QUIET_RATE;
            if (quiet && pull[k] < -limit && pull[k + 1] < -limit) {
                double t = rod.time()[watched[k]];
                double before = rod.time()[watched[k - 1]];
                return new Found(
                        0.5 * (t + before),
                        Math.max((t - before) / Math.sqrt(12), 0.005),
                        "the tip is pulled forward out of its rest while the butt is still");
            }
        }
        return Found.nothing(String.format(
                Locale.ROOT,
                "the tip was watched until %.1f s after the release and was not seen to be pulled",
                rod.time()[watched[watched.length - 1]] - release));
    }

    private static double[] aboveBaseline(RodSeries rod, int[] watched, double[] lag) {
        double[] out = new double[lag.length];
        int from = 0;
        for (int k = 0; k < lag.length; k++) {
            while (rod.time()[watched[k]] - rod.time()[watched[from]] > BASELINE_SECONDS) {
                from++;
            }
            out[k] = lag[k] - median(Arrays.copyOfRange(lag, from, k + 1));
        }
        return out;
    }

    private static double median(double[] values) {
        double[] s = values.clone();
        Arrays.sort(s);
        return s[s.length / 2];
    }
}
