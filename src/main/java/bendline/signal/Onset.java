package bendline.signal;

import bendline.signal.ChangePoint.Asked;
import bendline.signal.ChangePoint.Samples;
import java.util.Arrays;

/**
 * The moment from which a quantity that stayed level follows a parabola (a change point: for every moment asked the likeliest level and
 * parabola are found, and how likely these are tells of the moment). Errors may be large now and then: they are taken to follow
 * Student's distribution with three degrees of freedom, whose likeliest values are found by weighing anew (Lange, Little and Taylor,
 * Journal of the American Statistical Association 84, 1989; from memory).
 */
public final class Onset {

    private static final double FREEDOM = 3;
    private static final int ROUNDS = 6;

    /** Holds slope and curvature where nothing tells them, over what would double the level in the time asked. */
    private static final double WEAKLY = 0.01;

    private Onset() {}

    /**
     * What is known of the level beforehand.
     *
     * @param value not 0
     * @param sd its 68 % uncertainty
     */
    public record Level(double value, double sd) {}

    /** When it was, of the moments asked. */
    public static ChangePoint of(Samples samples, Level level, Asked asked) {
        double time = asked.to() - asked.from();
        return ChangePoint.of(samples, asked, moment -> -cost(samples, level, moment, time));
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
