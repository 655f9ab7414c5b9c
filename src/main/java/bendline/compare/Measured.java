package bendline.compare;

import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Carries each cast's own uncertainty into a shift. Where it scatters at random from cast to cast it is in the casts' scatter
 * already, which the rank test reads; but a few casts may agree by luck more closely than they were measured. So the interval
 * is never narrower, and the probability never smaller, than the stated uncertainties alone allow.
 */
final class Measured {

    private Measured() {}

    /** Standard deviation of a mean shift of two sets by measurement alone; unknown uncertainties count as none. */
    static double ofMeans(List<Reading> a, List<Reading> b) {
        return Math.sqrt(meanSquare(a) / a.size() + meanSquare(b) / b.size());
    }

    /** Mean square of the stated uncertainties; unknown ones count as none. */
    static double meanSquare(List<Reading> readings) {
        return readings.stream()
                .mapToDouble(Reading::plusMinus)
                .map(s -> Double.isFinite(s) ? s * s : 0)
                .average()
                .orElse(0);
    }

    /** The shift with at least that uncertainty. */
    static Shift carried(Shift s, double sd) {
        if (!(sd > 0)) {
            return s;
        }
        NormalDistribution normal = new NormalDistribution(null, 0, 1);
        double p = 2 * normal.cumulativeProbability(-Math.abs(s.estimate()) / sd);
        double half = s.bounded() ? sd * normal.inverseCumulativeProbability((1 + s.confidence()) / 2) : 0;
        return new Shift(
                s.estimate(),
                Math.min(s.low(), s.estimate() - half),
                Math.max(s.high(), s.estimate() + half),
                s.confidence(),
                Math.max(s.p(), p),
                s.smallestP());
    }
}
