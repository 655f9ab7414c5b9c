package bendline.signal;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * The moment at which a course changes, by how likely samples are if it changed at each of the moments asked.
 *
 * @param at middle of what is likely, seconds
 * @param sd its 68 % uncertainty, seconds
 * @param before samples up to the likeliest moment
 * @param after samples after it
 */
public record ChangePoint(double at, double sd, int before, int after) {

    /** Moments asked, a step. */
    private static final int A_STEP = 4;

    /**
     * What was seen.
     *
     * @param times seconds, rising
     * @param values any unit
     * @param sds their 68 % uncertainties, positive
     */
    public record Samples(double[] times, double[] values, double[] sds) {}

    /**
     * Which moments are asked.
     *
     * @param from earliest, seconds
     * @param to latest, after it; asked to the end of the quarter of a step it lies in
     * @param step usual time between samples
     * @param alike for how long errors go on, seconds, so that samples tell less together than as many independent ones
     */
    public record Asked(double from, double to, double step, double alike) {

        /**
         * Checks.
         *
         * @throws IllegalArgumentException if there is no time between, or no step
         */
        public Asked {
            if (!(from < to && step > 0)) {
                throw new IllegalArgumentException(
                        "no time from " + from + " to " + to + " s at steps of " + step + " s");
            }
        }

        private double[] moments() {
            int n = (int) Math.ceil((to - from) / step * A_STEP) + 1;
            return IntStream.range(0, n)
                    .mapToDouble(k -> from + k * step / A_STEP)
                    .toArray();
        }
    }

    /**
     * When it was.
     *
     * @param logLikelihood of the samples for a moment, but for a constant
     */
    static ChangePoint of(Samples samples, Asked asked, DoubleUnaryOperator logLikelihood) {
        double[] moments = asked.moments();
        double[] logs = Arrays.stream(moments).map(logLikelihood).toArray();
        int best = IntStream.range(0, logs.length).reduce(0, (a, b) -> logs[b] > logs[a] ? b : a);
        double together = Math.max(1, asked.alike() / asked.step());
        double[] likely = Arrays.stream(logs)
                .map(l -> Math.exp((l - logs[best]) / together))
                .toArray();
        double sum = Arrays.stream(likely).sum();
        double mean = IntStream.range(0, likely.length)
                .mapToDouble(k -> likely[k] * moments[k] / sum)
                .sum();
        double square = IntStream.range(0, likely.length)
                .mapToDouble(k -> likely[k] * (moments[k] - mean) * (moments[k] - mean) / sum)
                .sum();
        int before = (int)
                Arrays.stream(samples.times()).filter(t -> t <= moments[best]).count();
        double least = asked.step() / A_STEP;
        return new ChangePoint(mean, Math.max(least, Math.sqrt(square)), before, samples.times().length - before);
    }
}
