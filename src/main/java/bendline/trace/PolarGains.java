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
    /**
     * Added and taken off again, it leaves a value rounded to a 256th. Sums round a ring are whole numbers of these, which floats
     * hold exactly: cells that tell the same come out the same to the last bit, or rounding would choose among curves.
     */
    private static final float TO_FRACTIONS = 3 << 14;

    /** Cells beyond either end of a ring that the widest ridge there looks at. */
    private static final int ROUND = DIRECTIONS / 4;

    /** Strength, in units of the clutter, above which more does not count: a bright edge must not outweigh a long blank. */
    private static final float STRONGEST = 4;
    /** Strength, in units of the clutter, that a curve must have on average to be worth extending. */
    static final float WORTHWHILE = 1.3f;

    /** In which clutter is told, 15° each; and of so many to either side the middle one counts, since the blank itself fills one or two. */
    private static final int SECTORS = 24;

    private static final int SECTOR = DIRECTIONS / SECTORS;
    private static final int ABOUT = 4;

    /**
     * How much more all cells together may say than sectors apart. In most frames of a rendered clip without anybody else they say 1.2 to
     * 1.5 times as much, with a second angler 1.3 to 2.8, while three walkers pass the hands up to 13 (one clip each).
     */
    private static final float CROWDED = 2;

    /** Of the outermost ring's cells every so manieth is asked. */
    private static final int OUTERMOST = 4;

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
        float[] sum = new float[DIRECTIONS + 2 * ROUND + 1];
        Flanks flanks = new Flanks();
        for (int k = 0; k < radii.length; k++) {
            // Until the ridges are known, the row holds the ring itself.
            sample(difference, pivot, radii[k], out[k]);
            sum(out[k], sum);
            flanks.ridge(sum, radii[k], out[k]);
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
            float level = v >= -MOST ? v > MOST ? MOST : v : v < 0 ? -MOST : 0;
            ring[c] = level + TO_FRACTIONS - TO_FRACTIONS;
        }
    }

    /** Running sum round a ring, which begins {@link #ROUND} cells early and ends as many late. */
    private static void sum(float[] ring, float[] sum) {
        float so = 0;
        int at = DIRECTIONS - ROUND;
        for (int i = 1; i < sum.length; i++) {
            so += ring[at];
            sum[i] = so;
            at = at + 1 == DIRECTIONS ? 0 : at + 1;
        }
    }

    /**
     * What lies in a ridge and beside it, in every direction. Only loops that go straight through arrays of their own are made to go
     * many cells at a time; so running sums from elsewhere round the ring are copied.
     */
    private static final class Flanks {

        private final float[] in = new float[DIRECTIONS];
        private final float[] left = new float[DIRECTIONS];
        private final float[] right = new float[DIRECTIONS];
        private final float[] room = new float[DIRECTIONS];

        /** Ridge strength across a ring. */
        void ridge(float[] sum, double radius, float[] best) {
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
                int gap = half + Math.max(1, half / 2);
                int flank = Math.max(2, 2 * half);
                int far = gap + flank;
                mean(sum, -half, half + 1, in);
                mean(sum, -far, -gap, left);
                mean(sum, 1 + gap, 1 + far, right);
                better(in, left, right, (float) Math.sqrt(core * columnPx * Math.min(4, rowPx)), best);
            }
        }

        /** Mean of the cells between two places, counted from each cell. */
        private void mean(float[] sum, int from, int to, float[] out) {
            System.arraycopy(sum, ROUND + to, out, 0, DIRECTIONS);
            System.arraycopy(sum, ROUND + from, room, 0, DIRECTIONS);
            difference(out, room, 1f / (to - from));
        }

        private static void difference(float[] out, float[] less, float share) {
            for (int c = 0; c < DIRECTIONS; c++) {
                out[c] = (out[c] - less[c]) * share;
            }
        }

        private static void better(float[] in, float[] left, float[] right, float weight, float[] best) {
            for (int c = 0; c < DIRECTIONS; c++) {
                float a = in[c] - left[c];
                float b = in[c] - right[c];
                best[c] = Math.max(best[c], weight * Math.max(Math.min(a, b), -Math.max(a, b)));
            }
        }
    }

    /** Strengths become gains: in units of the clutter thereabouts, capped, less what is worthwhile, times pixels. */
    private static void worth(float[][] strength, double[] radii) {
        float[] clutter = clutter(strength, radii);
        for (int k = 0; k < strength.length; k++) {
            double rowPx = radii[k] * (RATIO - 1);
            float[] row = strength[k];
            for (int c = 0; c < DIRECTIONS; c++) {
                row[c] = (float) ((Math.min(STRONGEST, row[c] / clutter[c]) - WORTHWHILE) * rowPx);
            }
        }
    }

    /**
     * By direction, the strength that only one cell in twenty exceeds; but no more than {@value #CROWDED} times what only a twentieth of
     * the picture exceeds in the middle one of the sectors about it, or in the quieter quarter of all if that is more. People fill some
     * sectors, and most of the small cells near the hands: three walkers outweighed a blank that was clear to see.
     */
    private static float[] clutter(float[][] strength, double[] radii) {
        float[] sample = new float[strength.length * (DIRECTIONS / 8)];
        int n = 0;
        for (float[] row : strength) {
            for (int c = n % 8; c < DIRECTIONS; c += 8) {
                sample[n++] = row[c];
            }
        }
        float usual = Math.max(1, exceeded(sample, n));
        float[] out = new float[DIRECTIONS];
        float[] apart = apart(strength, radii, sample);
        float quiet = smallest(apart.clone(), SECTORS, SECTORS / 4);
        float[] about = new float[2 * ABOUT + 1];
        for (int s = 0; s < SECTORS; s++) {
            for (int i = 0; i < about.length; i++) {
                about[i] = apart[Math.floorMod(s + i - ABOUT, SECTORS)];
            }
            float here = Math.max(quiet, smallest(about, about.length, ABOUT));
            float clutter = Math.min(usual, CROWDED * Math.max(1, here));
            Arrays.fill(out, s * SECTOR, (s + 1) * SECTOR, clutter);
        }
        return out;
    }

    /** What only a twentieth of each sector exceeds. */
    private static float[] apart(float[][] strength, double[] radii, float[] room) {
        float[] out = new float[SECTORS];
        for (int s = 0; s < SECTORS; s++) {
            out[s] = exceeded(room, sample(strength, radii, s * SECTOR, room));
        }
        return out;
    }

    private static float exceeded(float[] sample, int n) {
        return smallest(sample, n, (int) (0.95 * (n - 1)));
    }

    /** Some cells of the sector that begins in a column, as many of a ring as it is wide. */
    private static int sample(float[][] strength, double[] radii, int from, float[] out) {
        int n = 0;
        for (int k = 0; k < strength.length; k++) {
            int every = (int) Math.ceil(OUTERMOST * radii[radii.length - 1] / radii[k]);
            for (int c = from + k % every; c < from + SECTOR; c += every) {
                out[n++] = strength[k][c];
            }
        }
        return n;
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
