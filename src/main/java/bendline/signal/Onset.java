package bendline.signal;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The moment from which a quantity that stayed level follows a parabola (a change point: for every moment asked the likeliest level and
 * parabola are found, and how likely these are tells of the moment). Errors may be large now and then: they are taken to follow
 * Student's distribution with three degrees of freedom, whose likeliest values are found by weighing anew (Lange, Little and Taylor,
 * Journal of the American Statistical Association 84, 1989; from memory).
 *
 * @param at middle of what is likely, seconds
 * @param sd its 68 % uncertainty, seconds
 * @param before samples up to the likeliest moment
 * @param after samples after it
 */
public record Onset(double at, double sd, int before, int after) {

    private static final double FREEDOM = 3;
    private static final int ROUNDS = 6;

    /** Moments asked, a step. */
    private static final int A_STEP = 4;

    /** Holds slope and curvature where nothing tells them, over what would double the level in the time asked. */
    private static final double WEAKLY = 0.01;

    /**
     * What was seen.
     *
     * @param times seconds, rising
     * @param values any unit
     * @param sds their 68 % uncertainties, positive
     */
    public record Samples(double[] times, double[] values, double[] sds) {}

    /**
     * What is known of the level beforehand.
     *
     * @param value not 0
     * @param sd its 68 % uncertainty
     */
    public record Level(double value, double sd) {}

    /**
     * Which moments are asked.
     *
     * @param from earliest, seconds
     * @param to latest, after it
     * @param step usual time between samples
     * @param alike for how long errors go on, so that samples tell less together than as many independent ones
     */
    public record Asked(double from, double to, double step, double alike) {

        /** Checks. */
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

    /** When it was, of the moments asked. */
    public static Onset of(Samples samples, Level level, Asked asked) {
        double[] moments = asked.moments();
        double[] cost = Arrays.stream(moments)
                .map(m -> cost(samples, level, m, asked.to() - asked.from()))
                .toArray();
        int best = IntStream.range(0, cost.length).reduce(0, (a, b) -> cost[b] < cost[a] ? b : a);
        double together = Math.max(1, asked.alike() / asked.step());
        double[] likely = Arrays.stream(cost)
                .map(c -> Math.exp((cost[best] - c) / together))
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
        return new Onset(mean, Math.max(least, Math.sqrt(square)), before, samples.times().length - before);
    }

    /** How unlikely the likeliest course is that begins to rise at a moment: its log-likelihood's opposite. */
    private static double cost(Samples s, Level level, double moment, double time) {
        double[] weights = new double[s.times().length];
        Arrays.fill(weights, 1);
        double[] course = {level.value(), 0, 0};
        for (int round = 0; round < ROUNDS; round++) {
            course = fitted(s, level, moment, time, weights);
            for (int i = 0; i < weights.length; i++) {
                weights[i] = (FREEDOM + 1) / (FREEDOM + square(off(s, i, course, moment)));
            }
        }
        double sum = square((course[0] - level.value()) / level.sd()) / 2;
        for (int i = 0; i < weights.length; i++) {
            sum += (FREEDOM + 1) / 2 * Math.log1p(square(off(s, i, course, moment)) / FREEDOM);
        }
        return sum;
    }

    private static double off(Samples s, int i, double[] course, double moment) {
        double since = Math.max(0, s.times()[i] - moment);
        return (s.values()[i] - course[0] - since * (course[1] + since * course[2])) / s.sds()[i];
    }

    /** Level, slope and curvature; things that part do not turn back, so the last is not negative. */
    private static double[] fitted(Samples s, Level level, double moment, double time, double[] weights) {
        double[] all = fitted(s, level, moment, time, weights, 3);
        return all[2] >= 0 ? all : Arrays.copyOf(fitted(s, level, moment, time, weights, 2), 3);
    }

    private static double[] fitted(
            Samples s, Level level, double moment, double time, double[] weights, int coefficients) {
        int n = weights.length;
        double[][] rows = new double[n + coefficients][coefficients];
        double[] y = new double[rows.length];
        for (int i = 0; i < n; i++) {
            double w = Math.sqrt(weights[i]) / s.sds()[i];
            double since = Math.max(0, s.times()[i] - moment);
            for (int k = 0; k < coefficients; k++) {
                rows[i][k] = w * Math.pow(since, k);
            }
            y[i] = w * s.values()[i];
        }
        rows[n][0] = 1 / level.sd();
        y[n] = level.value() / level.sd();
        for (int k = 1; k < coefficients; k++) {
            rows[n + k][k] = WEAKLY * Math.pow(time, k) / Math.abs(level.value());
        }
        return LeastSquares.solve(rows, y);
    }

    private static double square(double x) {
        return x * x;
    }
}
