package bendline.stroke;

import java.util.Arrays;

/** How far repeated draws of a number lie apart. */
final class Spread {

    /** Share of the draws that must have the number at all. */
    private static final double LEAST_SHARE = 0.7;

    private Spread() {}

    /** Half the width that holds the middle 68 % of the finite draws; NaN if too few are finite. */
    static double of(double[] draws) {
        double[] s = Arrays.stream(draws).filter(Double::isFinite).sorted().toArray();
        if (s.length < LEAST_SHARE * draws.length || s.length < 3) {
            return Double.NaN;
        }
        return 0.5 * (quantile(s, 0.84) - quantile(s, 0.16));
    }

    private static double quantile(double[] sorted, double q) {
        double at = q * (sorted.length - 1);
        int i = (int) at;
        return i + 1 < sorted.length ? sorted[i] + (at - i) * (sorted[i + 1] - sorted[i]) : sorted[i];
    }
}
