package bendline.compare;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.special.Gamma;

/**
 * What so many casts could have shown. Worked out for the t test, by its noncentral distribution; a rank test sees normal
 * scatter as well as a t test with 3/π of the casts (Hodges and Lehmann 1956), which is taken into account by the callers.
 */
final class Power {

    /** How often a change of the stated size is to be shown. */
    static final double WANTED = 0.8;

    /** Share of the casts that a rank test loses against a t test under normal scatter. */
    static final double RANK_EFFICIENCY = 3 / Math.PI;

    private static final int STEPS = 60;
    private static final int MOST_CASTS = 500;
    private static final double MOST_SCATTERS = 200;
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    /** Critical values by degrees of freedom and level: the searches below ask for the same few again and again. */
    private static final Map<List<Double>, Double> CRITICAL = new ConcurrentHashMap<>();

    private Power() {}

    /** Chance that a two-sided t test at a level shows a true shift, in standard errors, with so many degrees of freedom. */
    static double ofT(double shiftInErrors, double degrees, double level) {
        double critical = CRITICAL.computeIfAbsent(
                List.of(degrees, level),
                k -> new TDistribution(null, degrees).inverseCumulativeProbability(1 - level / 2));
        double constant = Math.log(2) + degrees / 2 * Math.log(degrees / 2) - Gamma.logGamma(degrees / 2);
        DoubleUnaryOperator part = s -> {
            double density = Math.exp(constant + (degrees - 1) * Math.log(s) - degrees * s * s / 2);
            // A density this small adds nothing, and the normal distribution takes its time.
            return density < 1e-9
                    ? 0
                    : density
                            * (NORMAL.cumulativeProbability(shiftInErrors - critical * s)
                                    + NORMAL.cumulativeProbability(-shiftInErrors - critical * s));
        };
        double reach = 10 / Math.sqrt(degrees);
        return Math.min(1, area(part, Math.max(1e-9, 1 - reach), 1 + reach));
    }

    /** The trapezium rule, which is exact to many digits for a bell that has died away at both ends. */
    private static double area(DoubleUnaryOperator f, double from, double to) {
        double h = (to - from) / STEPS;
        double sum = (f.applyAsDouble(from) + f.applyAsDouble(to)) / 2;
        for (int i = 1; i < STEPS; i++) {
            sum += f.applyAsDouble(from + i * h);
        }
        return sum * h;
    }

    /** Chance to show a change of {@code change} scatters with two sets of {@code n} and {@code m}. */
    static double ofSets(double change, double n, double m, double level) {
        return ofT(change / Math.sqrt(1 / n + 1 / m), n + m - 2, level);
    }

    /** Chance to show a change of {@code change} scatters of the pairs' differences with {@code n} pairs. */
    static double ofPairs(double change, double n, double level) {
        return ofT(change * Math.sqrt(n), n - 1, level);
    }

    /** The smallest change, in scatters, that the chance reaches {@link #WANTED} for; NaN where none does. */
    static double smallest(DoubleUnaryOperator powerOfChange) {
        if (powerOfChange.applyAsDouble(MOST_SCATTERS) < WANTED) {
            return Double.NaN;
        }
        return new BrentSolver(1e-7).solve(100, c -> powerOfChange.applyAsDouble(c) - WANTED, 0, MOST_SCATTERS);
    }

    /**
     * The fewest casts with which the chance reaches {@link #WANTED}, at least {@code least}; -1 where that is over 500.
     *
     * @param guess where to begin to look
     */
    static int casts(DoubleUnaryOperator powerOfCasts, int least, double guess) {
        int n = (int) Math.max(least, Math.min(MOST_CASTS, Math.round(guess)));
        if (powerOfCasts.applyAsDouble(n) >= WANTED) {
            while (n > least && powerOfCasts.applyAsDouble(n - 1) >= WANTED) {
                n--;
            }
            return n;
        }
        while (n <= MOST_CASTS && powerOfCasts.applyAsDouble(n) < WANTED) {
            n++;
        }
        return n > MOST_CASTS ? -1 : n;
    }

    /** About how many casts that takes, by the normal distribution. */
    static double guess(double change, boolean paired, double level) {
        double z = NORMAL.inverseCumulativeProbability(1 - level / 2) + NORMAL.inverseCumulativeProbability(WANTED);
        return (paired ? 1 : 2) * z * z / (change * change) / RANK_EFFICIENCY + (paired ? 2 : 1);
    }
}
