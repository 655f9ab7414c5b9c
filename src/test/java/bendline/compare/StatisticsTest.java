package bendline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.stat.inference.MannWhitneyUTest;
import org.apache.commons.math3.stat.inference.TTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The tests and intervals against published worked examples and against a general library. */
class StatisticsTest {

    /** Efron and Tibshirani, An Introduction to the Bootstrap (1993), table 2.1: survival of mice in days. */
    private static final int[] TREATED = {94, 197, 16, 38, 99, 141, 23};

    private static final int[] CONTROL = {52, 104, 146, 10, 50, 31, 40, 27, 46};

    private static double[] doubles(int... values) {
        return Arrays.stream(values).asDoubleStream().toArray();
    }

    private static int[] joined(int[] a, int[] b) {
        int[] all = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, all, a.length, b.length);
        return all;
    }

    @Test
    void countsThePermutationsOfTheMouseData() {
        SumDistribution d = SumDistribution.ofSplits(joined(TREATED, CONTROL), TREATED.length);
        long sum = Arrays.stream(TREATED).sum();
        assertThat(d.asFarAs(sum)).isCloseTo(3182.0 / 11440, within(1e-12));
        assertThat(d.atLeast(sum)).isCloseTo(1608.0 / 11440, within(1e-12));
    }

    @Test
    void countsThePermutationsOfTheCalciumTrial() {
        // Moore and McCabe, Introduction to the Practice of Statistics; the exact count was made with R.
        int[] x = {7, -4, 18, 17, -3, -5, 1, 10, 11, -2};
        int[] y = {-1, 12, -1, -3, 3, -5, 5, 2, -11, -1, -3};
        SumDistribution d = SumDistribution.ofSplits(joined(x, y), x.length);
        assertThat(d.asFarAs(Arrays.stream(x).sum())).isCloseTo(0.1205758, within(5e-8));
        assertThat(d.atLeast(Arrays.stream(x).sum())).isCloseTo(0.0633484, within(5e-8));
    }

    @Test
    void countsTheSignsOfTheSleepData() {
        // Cushny and Peebles 1905, Student's sleep data; differences in tenths of an hour; 4 of 1024.
        int[] sizes = {12, 24, 13, 13, 0, 10, 18, 8, 46, 14};
        assertThat(SumDistribution.ofSigns(sizes).asFarAs(158)).isCloseTo(4.0 / 1024, within(1e-12));
    }

    @Test
    void shiftOfTheMouseData() {
        Shift s = Shift.between(doubles(CONTROL), doubles(TREATED), 0.95);
        assertThat(s.estimate()).isEqualTo(28);
        assertThat(s.low()).isEqualTo(-27);
        assertThat(s.high()).isEqualTo(93);
    }

    @Test
    void rankSumOfHollanderAndWolfe() {
        // Hollander and Wolfe 1973, p. 69 f.; interval and estimate as R's wilcox.test gives them.
        double[] x = {0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46};
        double[] y = {1.15, 0.88, 0.90, 0.74, 1.21};
        Shift s = Shift.between(y, x, 0.95);
        assertThat(s.p()).isCloseTo(0.2544, within(5e-5));
        assertThat(s.estimate()).isCloseTo(0.305, within(1e-12));
        assertThat(s.low()).isCloseTo(-0.15, within(1e-12));
        assertThat(s.high()).isCloseTo(0.76, within(1e-12));
        Shift wide = Shift.between(y, x, 0.90);
        assertThat(wide.low()).isCloseTo(-0.08, within(1e-12));
        assertThat(wide.high()).isCloseTo(0.72, within(1e-12));
    }

    @Test
    void signedRanksOfHollanderAndWolfe() {
        // Hollander and Wolfe 1973, p. 29 f.
        double[] before = {1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30};
        double[] after = {0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29};
        double[] differences = new double[before.length];
        Arrays.setAll(differences, i -> before[i] - after[i]);
        Shift s = Shift.ofPairs(differences, 0.95);
        assertThat(s.p()).isCloseTo(0.03906, within(5e-6));
        assertThat(s.estimate()).isCloseTo(0.46, within(1e-9));
        assertThat(s.low()).isCloseTo(0.010, within(1e-9));
        assertThat(s.high()).isCloseTo(0.786, within(1e-9));
    }

    @Test
    void mannWhitneyOfTheSciPyManual() {
        // The example of scipy.stats.mannwhitneyu: U 17 and 3, exact p 0.1111111.
        double[] males = {19, 22, 16, 29, 24};
        double[] females = {20, 11, 17, 12};
        assertThat(Shift.between(females, males, 0.95).p()).isCloseTo(0.1111111111, within(1e-9));
        // Commons Math only knows the normal approximation, which is why small sets are counted out here.
        assertThat(new MannWhitneyUTest().mannWhitneyUTest(females, males)).isCloseTo(0.0864107329737, within(1e-9));
    }

    /** Smallest two-sided p of n against n: 2 over the number of splits. */
    @ParameterizedTest
    @CsvSource({"3, 0.1", "4, 0.0285714", "5, 0.00793651", "6, 0.00216450", "8, 0.00015540"})
    void theSmallestProbabilityIsThatOfThePlainestOrder(int n, double p) {
        double[] a = new double[n];
        double[] b = new double[n];
        Arrays.setAll(a, i -> i);
        Arrays.setAll(b, i -> 100 + i);
        Shift s = Shift.between(a, b, 0.95);
        assertThat(s.p()).isCloseTo(p, within(1e-7));
        assertThat(s.smallestP()).isCloseTo(p, within(1e-7));
        assertThat(s.bounded()).isEqualTo(n > 3);
    }

    @ParameterizedTest
    @CsvSource({"5, 0.0625", "6, 0.03125", "8, 0.0078125", "10, 0.001953125"})
    void theSmallestProbabilityOfPairs(int n, double p) {
        double[] d = new double[n];
        Arrays.setAll(d, i -> 1 + i);
        assertThat(Shift.ofPairs(d, 0.95).p()).isCloseTo(p, within(1e-12));
        assertThat(Shift.ofPairs(d, 0.95).bounded()).isEqualTo(n > 5);
    }

    @Test
    void tiesAreCountedAsEverySplitOfTheTiedNumbersGivesThem() {
        Random random = new Random(11);
        for (int round = 0; round < 40; round++) {
            double[] all = random.ints(9, 0, 5).asDoubleStream().toArray();
            Shift s = Shift.between(Arrays.copyOf(all, 4), Arrays.copyOfRange(all, 4, 9), 0.95);
            assertThat(s.p()).isCloseTo(bySplitting(all, 5), within(1e-12));
        }
    }

    /** All splits of the numbers by bit patterns, with midranks counted pair by pair: nothing shared with the code tested. */
    private static double bySplitting(double[] all, int size) {
        int last = ((1 << size) - 1) << (all.length - size);
        double expected = size * (all.length + 1) / 2.0;
        double seen = Math.abs(rankSum(all, last) - expected);
        int count = 0;
        int far = 0;
        for (int pattern = 0; pattern < 1 << all.length; pattern++) {
            if (Integer.bitCount(pattern) == size) {
                count++;
                far += Math.abs(rankSum(all, pattern) - expected) >= seen - 1e-9 ? 1 : 0;
            }
        }
        return (double) far / count;
    }

    private static double rankSum(double[] all, int pattern) {
        double sum = 0;
        for (int i = 0; i < all.length; i++) {
            if ((pattern >> i & 1) == 1) {
                double rank = 0.5;
                for (double other : all) {
                    rank += other < all[i] ? 1 : other == all[i] ? 0.5 : 0;
                }
                sum += rank;
            }
        }
        return sum;
    }

    @Test
    void manyNumbersAgreeWithTheNormalTestOfTheLibraryAndWithTheCountedInterval() {
        Random random = new Random(5);
        double[] a = random.doubles(60).toArray();
        double[] b = random.doubles(60).map(x -> x + 0.1).toArray();
        Shift s = Shift.between(a, b, 0.95);
        assertThat(s.p()).isCloseTo(new MannWhitneyUTest().mannWhitneyUTest(a, b), within(2e-3));
        double[] c = Arrays.copyOf(a, 50);
        double[] d = Arrays.copyOf(b, 50);
        Shift counted = Shift.between(c, d, 0.95);
        assertThat(counted.confidence()).isBetween(0.95, 0.951);
        assertThat(counted.p()).isCloseTo(new MannWhitneyUTest().mannWhitneyUTest(c, d), within(2e-3));
    }

    /** R's power.t.test, two-sided 5 %, power 0.8: casts a set. */
    @ParameterizedTest
    @CsvSource({"0.5, 63.77", "0.8, 25.52", "1.0, 16.71"})
    void powerIsThatOfThePublishedTables(double change, double n) {
        assertThat(Power.ofSets(change, n, n, 0.05)).isCloseTo(0.8, within(2e-4)); // the tables round casts to 0.01
        assertThat(Power.casts(x -> Power.ofSets(change, x, x, 0.05), 2, 10)).isEqualTo((int) Math.ceil(n));
        assertThat(Power.smallest(c -> Power.ofSets(c, n, n, 0.05))).isCloseTo(change, within(3e-4));
    }

    @Test
    void holmOnTheTextbookProbabilities() {
        assertThat(Holm.adjusted(new double[] {0.01, 0.02, 0.03, 0.04, 0.05}))
                .usingElementComparator((x, y) -> Math.abs(x - y) < 1e-12 ? 0 : 1)
                .containsExactly(0.05, 0.08, 0.09, 0.09, 0.09);
        assertThat(Holm.adjusted(new double[] {0.04, 0.001})).containsExactly(0.04, 0.002);
    }

    @Test
    void theLibrarysTTestIsTheOneOfTheTextbooks() {
        // Student's sleep data: Welch p 0.07939, paired p 0.002833; why casts that alternate are compared as pairs.
        double[] one = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
        double[] two = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
        assertThat(new TTest().tTest(one, two)).isCloseTo(0.07939, within(1e-5));
        assertThat(new TTest().pairedTTest(one, two)).isCloseTo(0.002833, within(1e-6));
        double[] d = new double[10];
        Arrays.setAll(d, i -> two[i] - one[i]);
        assertThat(Shift.ofPairs(d, 0.95).p())
                .isLessThan(Shift.between(one, two, 0.95).p() / 5);
    }
}
