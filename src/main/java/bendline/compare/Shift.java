package bendline.compare;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * By how much one set of numbers lies above another, and whether chance alone could do that.
 *
 * @param estimate Hodges–Lehmann: the median of all differences (two sets) or of all pair means (pairs)
 * @param low lower end of the interval; NaN where so few numbers can't bound it at the level asked for
 * @param high upper end; NaN likewise
 * @param confidence what the interval really holds, at least the level asked for; NaN where there is none
 * @param p two-sided probability of a shift as large as this or larger if there were none
 * @param smallestP the smallest such probability that as many numbers can give at all
 */
public record Shift(double estimate, double low, double high, double confidence, double p, double smallestP) {

    /** Up to so many numbers together the distributions are counted out, above them the normal one stands in. */
    private static final int COUNTED = 100;

    /** Whether the interval exists. */
    public boolean bounded() {
        return Double.isFinite(low) && Double.isFinite(high);
    }

    /**
     * Two sets, Mann–Whitney. The interval is that of the test without ties, which with ties holds at least as much.
     *
     * @param a numbers before
     * @param b numbers after; the shift is b above a
     * @param level for the interval, for example 0.95
     */
    static Shift between(double[] a, double[] b, double level) {
        requireNumbers(a.length, b.length);
        double[] differences = new double[a.length * b.length];
        int k = 0;
        for (double x : a) {
            for (double y : b) {
                differences[k++] = y - x;
            }
        }
        Arrays.sort(differences);
        double[] all = Arrays.copyOf(b, a.length + b.length);
        System.arraycopy(a, 0, all, b.length, a.length);
        int[] ranks = Ranks.doubled(all);
        long sum = Arrays.stream(ranks, 0, b.length).asLongStream().sum();
        if (all.length > COUNTED) {
            return largeSplit(differences, ranks, sum, b.length, level);
        }
        double p = SumDistribution.ofSplits(ranks, b.length).asFarAs(sum);
        SumDistribution untied = SumDistribution.ofSplits(Ranks.plain(all.length), b.length);
        return counted(differences, untied, p, level);
    }

    /**
     * Pairs, Wilcoxon's signed ranks. Pairs without a difference keep their rank but take no side (Pratt).
     *
     * @param differences after minus before, one a pair
     */
    static Shift ofPairs(double[] differences, double level) {
        requireNumbers(differences.length, differences.length);
        double[] means = new double[differences.length * (differences.length + 1) / 2];
        int k = 0;
        for (int i = 0; i < differences.length; i++) {
            for (int j = i; j < differences.length; j++) {
                means[k++] = (differences[i] + differences[j]) / 2;
            }
        }
        Arrays.sort(means);
        int[] sizes = Ranks.doubled(Arrays.stream(differences).map(Math::abs).toArray());
        long sum = 0;
        for (int i = 0; i < sizes.length; i++) {
            if (differences[i] == 0) {
                sizes[i] = 0;
            } else if (differences[i] > 0) {
                sum += sizes[i];
            }
        }
        if (differences.length > COUNTED) {
            return largeSigns(means, sizes, sum, level);
        }
        double p = SumDistribution.ofSigns(sizes).asFarAs(sum);
        return counted(means, SumDistribution.ofSigns(Ranks.plain(differences.length)), p, level);
    }

    private static void requireNumbers(int a, int b) {
        if (a < 1 || b < 1) {
            throw new IllegalArgumentException("a shift needs numbers on both sides, got " + a + " and " + b);
        }
    }

    /** Both intervals leave out as many of the sorted candidates at either end as the test's tail allows. */
    private static Shift counted(double[] sorted, SumDistribution untied, double p, double level) {
        int cut = untied.belowWithin((1 - level) / 2);
        double smallest = Math.min(1, 2 * untied.ofLowest(1));
        double middle = Ranks.median(sorted);
        if (cut < 1) {
            return new Shift(middle, Double.NaN, Double.NaN, Double.NaN, p, smallest);
        }
        double holds = 1 - 2 * untied.ofLowest(cut);
        return new Shift(middle, sorted[cut - 1], sorted[sorted.length - cut], holds, p, smallest);
    }

    private static Shift largeSplit(double[] sorted, int[] ranks, long sum, int m, double level) {
        int all = ranks.length;
        int n = all - m;
        double mean = m * (all + 1.0);
        double squares = Arrays.stream(ranks).mapToDouble(r -> (double) r * r).sum();
        double variance = m * (double) n / (all * (all - 1.0)) * (squares - all * (all + 1.0) * (all + 1.0));
        double sd = Math.sqrt(m * (double) n * (all + 1) / 12);
        return large(sorted, Math.abs(sum - mean) - 1, Math.sqrt(variance), sd, level);
    }

    private static Shift largeSigns(double[] sorted, int[] sizes, long sum, double level) {
        int n = sizes.length;
        double mean = Arrays.stream(sizes).sum() / 2.0;
        double squares = Arrays.stream(sizes).mapToDouble(r -> (double) r * r).sum();
        double sd = Math.sqrt(n * (n + 1.0) * (2 * n + 1) / 24);
        return large(sorted, Math.abs(sum - mean) - 1, Math.sqrt(squares / 4), sd, level);
    }

    private static Shift large(double[] sorted, double beyond, double tiedSd, double sd, double level) {
        NormalDistribution normal = new NormalDistribution(null, 0, 1);
        double p = tiedSd > 0 ? Math.min(1, 2 * normal.cumulativeProbability(-Math.max(0, beyond) / tiedSd)) : 1;
        double z = normal.inverseCumulativeProbability((1 + level) / 2);
        int cut = (int) Math.max(1, Math.floor(sorted.length / 2.0 - z * sd));
        return new Shift(Ranks.median(sorted), sorted[cut - 1], sorted[sorted.length - cut], level, p, 0);
    }
}
