package bendline.trace;

import bendline.trace.BlankFitter.Fit;
import java.util.List;

/**
 * Where on the rod the upper hand is. A hand is wider and brighter or darker than the blank on either side of it, so over
 * many frames the mean ridge strength has a bump there; between the hands the butt shows again.
 */
final class GripFinder {

    /** Upper hand to tip over the visible length where no hand can be made out; common practice, no source. */
    private static final double USUAL_SHARE = 0.85;

    private static final double USUAL_SHARE_SD = 0.04;
    private static final double NEAREST = 0.72;
    private static final double FARTHEST = 0.96;
    /** How far a bump must stand out from both sides to be taken for a hand. */
    private static final double PROMINENCE = 0.2;

    private GripFinder() {}

    /**
     * @param px upper hand to tip along the blank, pixels
     * @param sdPx its 68 % uncertainty
     * @param seen whether a hand was made out
     */
    record FreeLength(double px, double sdPx, boolean seen) {}

    /** @param lengthPx visible length of the rod, pixels */
    static FreeLength of(List<Fit> fits, double lengthPx) {
        int n = (int) (lengthPx / Strip.STEP_PX);
        double[] sum = new double[n];
        int[] count = new int[n];
        for (Fit f : fits) {
            for (int i = 0; i < Math.min(n, f.profile().length); i++) {
                sum[i] += Math.min(60, f.profile()[i]);
                count[i]++;
            }
        }
        double[] mean = new double[n];
        int half = Math.max(1, n / 120);
        for (int i = 0; i < n; i++) {
            double s = 0;
            int c = 0;
            for (int k = Math.max(0, i - half); k <= Math.min(n - 1, i + half); k++) {
                s += sum[k];
                c += count[k];
            }
            mean[i] = c > 0 ? s / c : 0;
        }
        return bump(mean, lengthPx);
    }

    private static FreeLength bump(double[] mean, double lengthPx) {
        int n = mean.length;
        int reach = Math.max(2, n / 14);
        double best = 0;
        int at = -1;
        for (int i = (int) (NEAREST * n); i < FARTHEST * n; i++) {
            double outer = lowest(mean, i - reach, i);
            double inner = lowest(mean, i, Math.min(n - 1, i + reach));
            double prominence = mean[i] / Math.max(1, Math.max(outer, inner)) - 1;
            if (prominence > best) {
                best = prominence;
                at = i;
            }
        }
        return best > PROMINENCE
                ? new FreeLength(at * Strip.STEP_PX, 0.012 * lengthPx, true)
                : new FreeLength(USUAL_SHARE * lengthPx, USUAL_SHARE_SD * lengthPx, false);
    }

    private static double lowest(double[] values, int from, int to) {
        double low = Double.POSITIVE_INFINITY;
        for (int i = Math.max(0, from); i <= to; i++) {
            low = Math.min(low, values[i]);
        }
        return low;
    }
}
