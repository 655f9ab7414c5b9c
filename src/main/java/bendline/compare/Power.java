package bendline.compare;

import java.util.function.DoubleUnaryOperator;
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

    private static final int STEPS = 400;
    private static final int MOST_CASTS = 500;
    private static final NormalDistribution NORMAL = new NormalDistribution();

    private Power() {}

    /** Chance that a two-sided t test at a level shows a true shift, in standard errors, with so many degrees of freedom. */
    static double ofT(double shiftInErrors, double degrees, double level) {
        double critical = new TDistribution(degrees).inverseCumulativeProbability(1 - level / 2);
        double constant = Math.log(2) + degrees / 2 * Math.log(degrees / 2) - Gamma.logGamma(degrees / 2);
        DoubleUnaryOperator part = s -> {
            double density = Math.exp(constant + (degrees - 1) * Math.log(s) - degrees * s * s / 2);
            return density
                    * (NORMAL.cumulativeProbability(shiftInErrors - critical * s)
                            + NORMAL.cumulativeProbability(-shiftInErrors - critical * s));
        };
        double reach = 10 / Math.sqrt(degrees);
        return Math.min(1, simpson(part, Math.max(1e-9, 1 - reach), 1 + reach));
    }

    private static double simpson(DoubleUnaryOperator f, double from, double to) {
        double h = (to - from) / STEPS;
        double sum = f.applyAsDouble(from) + f.applyAsDouble(to);
        for (int i = 1; i < STEPS; i++) {
            sum += (i % 2 == 1 ? 4 : 2) * f.applyAsDouble(from + i * h);
        }
        return sum * h / 3;
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
        double low = 0;
        double high = 200;
        if (powerOfChange.applyAsDouble(high) < WANTED) {
            return Double.NaN;
        }
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (powerOfChange.applyAsDouble(middle) < WANTED) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /** The fewest casts with which the chance reaches {@link #WANTED}, at least {@code least}; -1 where that is over 500. */
    static int casts(DoubleUnaryOperator powerOfCasts, int least) {
        int low = least - 1;
        int high = MOST_CASTS;
        if (powerOfCasts.applyAsDouble(high) < WANTED) {
            return -1;
        }
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (powerOfCasts.applyAsDouble(middle) < WANTED) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }
}
