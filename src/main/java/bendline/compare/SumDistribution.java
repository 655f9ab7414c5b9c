package bendline.compare;

import java.util.Arrays;

/**
 * The exact distribution of a sum of whole-number scores when chance decides which scores enter it: every choice of a given
 * number of them equally likely (two sets), or every score in or out by the toss of a coin (pairs). With midranks as scores
 * that is the rank-sum or the signed-rank test, ties included; with the measured numbers themselves the permutation test of
 * means. Counted by adding one score after another, so it needs no list of all splits.
 */
final class SumDistribution {

    private final long lowest;
    private final double[] share;
    private final double mean;

    private SumDistribution(long lowest, double[] share) {
        int empty = 0;
        while (share[empty] == 0) {
            empty++;
        }
        this.lowest = lowest + empty;
        this.share = Arrays.copyOfRange(share, empty, share.length);
        double m = 0;
        for (int i = 0; i < this.share.length; i++) {
            m += this.share[i] * (this.lowest + i);
        }
        this.mean = m;
    }

    /**
     * Sums of {@code choose} of the scores.
     *
     * @param scores of both sets together
     * @param choose how many of them make the sum, 1 to all
     */
    static SumDistribution ofSplits(int[] scores, int choose) {
        if (choose < 1 || choose > scores.length) {
            throw new IllegalArgumentException("can't choose " + choose + " of " + scores.length + " scores");
        }
        int least = Arrays.stream(scores).min().orElse(0);
        int[] shifted = Arrays.stream(scores).map(s -> s - least).sorted().toArray();
        int top = Arrays.stream(shifted).skip(scores.length - choose).sum();
        // ways[k][s]: share of the ways to choose k of the scores so far with sum s, among all ways to choose k of all.
        double[][] ways = new double[choose + 1][top + 1];
        ways[0][0] = 1;
        for (int score : shifted) {
            for (int k = choose; k >= 1; k--) {
                for (int s = top; s >= score; s--) {
                    ways[k][s] += ways[k - 1][s - score];
                }
            }
        }
        return new SumDistribution((long) least * choose, normalised(ways[choose]));
    }

    /** Sums of those scores for which a coin shows heads. */
    static SumDistribution ofSigns(int[] scores) {
        for (int s : scores) {
            if (s < 0) {
                throw new IllegalArgumentException("scores of pairs are sizes, not negative, got " + s);
            }
        }
        double[] ways = new double[Arrays.stream(scores).sum() + 1];
        ways[0] = 1;
        for (int score : scores) {
            double[] next = new double[ways.length];
            for (int s = 0; s < ways.length; s++) {
                next[s] = 0.5 * ways[s] + (s >= score ? 0.5 * ways[s - score] : 0);
            }
            ways = next;
        }
        return new SumDistribution(0, ways);
    }

    private static double[] normalised(double[] ways) {
        double all = Arrays.stream(ways).sum();
        return Arrays.stream(ways).map(w -> w / all).toArray();
    }

    /** Probability of a sum at least as far from the mean as this one, on either side. */
    double asFarAs(long sum) {
        double far = Math.abs(sum - mean) - 1e-9 * Math.max(1, Math.abs(mean));
        double p = 0;
        for (int i = 0; i < share.length; i++) {
            if (Math.abs(lowest + i - mean) >= far) {
                p += share[i];
            }
        }
        return Math.min(1, p);
    }

    /** Probability of this sum or a larger one. */
    double atLeast(long sum) {
        double p = 0;
        for (int i = (int) Math.max(0, sum - lowest); i < share.length; i++) {
            p += share[i];
        }
        return Math.min(1, p);
    }

    /** The largest number of equally small sums, counted from the bottom, whose probability together stays within a limit. */
    int belowWithin(double limit) {
        double p = 0;
        int k = 0;
        while (k < share.length && p + share[k] <= limit + 1e-12) {
            p += share[k++];
        }
        return k;
    }

    /** Probability of the lowest {@code k} sums. */
    double ofLowest(int k) {
        return Arrays.stream(share, 0, k).sum();
    }
}
