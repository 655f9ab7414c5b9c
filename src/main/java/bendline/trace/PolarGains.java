package bendline.trace;

import static bendline.trace.PolarSearch.DIRECTIONS;
import static bendline.trace.PolarSearch.RATIO;
import static bendline.trace.PolarSearch.STEP_RAD;

import bendline.geometry.Point;
import bendline.image.Plane;
import java.util.Arrays;

/** What a curve gains by running through each cell of the rings round a pivot: the more, the clearer a ridge runs outwards there. */
final class PolarGains {

    private static final double[] WIDTHS_PX = {2.5, 5, 10, 20, 40};
    /** Differences beyond this count no more, noise units. */
    private static final float MOST = 30;
    /** Cells beyond either end of a ring that the widest ridge there looks at. */
    private static final int ROUND = DIRECTIONS / 4;

    /** Strength, in units of the clutter, above which more does not count: a bright edge must not outweigh a long blank. */
    private static final float STRONGEST = 4;
    /** Strength, in units of the clutter, that a curve must have on average to be worth extending. */
    static final float WORTHWHILE = 1.3f;

    private static final double[] COS = new double[DIRECTIONS];
    private static final double[] SIN = new double[DIRECTIONS];

    static {
        for (int c = 0; c < DIRECTIONS; c++) {
            COS[c] = Math.cos((c + 0.5) * STEP_RAD);
            SIN[c] = Math.sin((c + 0.5) * STEP_RAD);
        }
    }

    private PolarGains() {}

    /** By ring and direction, strength times pixels. */
    static float[][] of(Plane difference, Point pivot, double[] radii) {
        float[][] out = new float[radii.length][DIRECTIONS];
        float[] ring = new float[DIRECTIONS];
        // Cells that tell the same must come out the same to the last bit, or rounding would choose among curves: so
        // with doubles.
        double[] sum = new double[DIRECTIONS + 2 * ROUND + 1];
        double[] best = new double[DIRECTIONS];
        for (int k = 0; k < radii.length; k++) {
            sample(difference, pivot, radii[k], ring);
            sum(ring, sum);
            ridge(sum, radii[k], best);
            for (int c = 0; c < DIRECTIONS; c++) {
                out[k][c] = (float) best[c];
            }
        }
        worth(out, radii);
        return out;
    }

    private static void sample(Plane difference, Point pivot, double radius, float[] ring) {
        double x = pivot.x();
        double y = pivot.y();
        for (int c = 0; c < DIRECTIONS; c++) {
            float v = difference.sample(x + radius * COS[c], y + radius * SIN[c]);
            // What is no number compares with nothing.
            ring[c] = v >= -MOST ? v > MOST ? MOST : v : v < 0 ? -MOST : 0;
        }
    }

    /** Running sum round a ring, which begins {@link #ROUND} cells early and ends as many late. */
    private static void sum(float[] ring, double[] sum) {
        int at = DIRECTIONS - ROUND;
        for (int i = 1; i < sum.length; i++) {
            sum[i] = sum[i - 1] + ring[at];
            at = at + 1 == DIRECTIONS ? 0 : at + 1;
        }
    }

    /** Ridge strength across a ring. */
    private static void ridge(double[] sum, double radius, double[] best) {
        double columnPx = radius * STEP_RAD;
        double rowPx = radius * (RATIO - 1);
        Arrays.fill(best, 0);
        int lastHalf = -1;
        for (double width : WIDTHS_PX) {
            int half = (int) Math.round(width / columnPx / 2);
            if (half == lastHalf || 4 * half > DIRECTIONS / 4 || width > Blur.widest(radius)) {
                continue;
            }
            lastHalf = half;
            int core = 2 * half + 1;
            ridge(sum, half, Math.sqrt(core * columnPx * Math.min(4, rowPx)), best);
        }
    }

    private static void ridge(double[] sum, int half, double weight, double[] best) {
        int core = 2 * half + 1;
        int gap = half + Math.max(1, half / 2);
        int flank = Math.max(2, 2 * half);
        int far = gap + flank;
        for (int c = 0; c < DIRECTIONS; c++) {
            int at = ROUND + c;
            double in = (sum[at + half + 1] - sum[at - half]) / core;
            double a = in - (sum[at - gap] - sum[at - far]) / flank;
            double b = in - (sum[at + 1 + far] - sum[at + 1 + gap]) / flank;
            best[c] = Math.max(best[c], weight * Strip.lesserStep(a, b));
        }
    }

    /** Strengths become gains: in units of the frame's own clutter, capped, less what is worthwhile, times pixels. */
    private static void worth(float[][] strength, double[] radii) {
        float clutter = clutter(strength);
        for (int k = 0; k < strength.length; k++) {
            double rowPx = radii[k] * (RATIO - 1);
            float[] row = strength[k];
            for (int c = 0; c < DIRECTIONS; c++) {
                row[c] = (float) ((Math.min(STRONGEST, row[c] / clutter) - WORTHWHILE) * rowPx);
            }
        }
    }

    /** The strength that only one cell in twenty exceeds. */
    private static float clutter(float[][] strength) {
        float[] sample = new float[strength.length * (DIRECTIONS / 8)];
        int n = 0;
        for (float[] row : strength) {
            for (int c = n % 8; c < DIRECTIONS && n < sample.length; c += 8) {
                sample[n++] = row[c];
            }
        }
        return Math.max(1, smallest(sample, n, (int) (0.95 * (n - 1))));
    }

    /** The value that would come at a place if the first {@code n} were sorted; changes their order. */
    private static float smallest(float[] values, int n, int place) {
        int from = 0;
        int to = n - 1;
        while (from < to) {
            float middle = values[(from + to) >>> 1];
            int i = from;
            int j = to;
            while (i <= j) {
                while (values[i] < middle) {
                    i++;
                }
                while (values[j] > middle) {
                    j--;
                }
                if (i <= j) {
                    float v = values[i];
                    values[i++] = values[j];
                    values[j--] = v;
                }
            }
            if (place <= j) {
                to = j;
            } else if (place >= i) {
                from = i;
            } else {
                return values[place];
            }
        }
        return values[place];
    }
}
