package bendline.compare;

import java.util.Arrays;

/** Ranks of numbers; equal numbers share the mean of their places. */
final class Ranks {

    private Ranks() {}

    /** Twice the midrank of each value, from 2 for the smallest, so that all are whole numbers. */
    static int[] doubled(double[] values) {
        int n = values.length;
        Integer[] order = new Integer[n];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (i, j) -> Double.compare(values[i], values[j]));
        int[] out = new int[n];
        int from = 0;
        while (from < n) {
            int to = from;
            while (to + 1 < n && values[order[to + 1]] == values[order[from]]) {
                to++;
            }
            for (int k = from; k <= to; k++) {
                out[order[k]] = from + to + 2;
            }
            from = to + 1;
        }
        return out;
    }

    /** 1 to n. */
    static int[] plain(int n) {
        int[] out = new int[n];
        Arrays.setAll(out, i -> i + 1);
        return out;
    }

    /** The middle of sorted values. */
    static double median(double[] sorted) {
        int n = sorted.length;
        return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
    }
}
