package bendline.trace;

import bendline.geometry.PolynomialCurve;
import bendline.image.Plane;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The difference picture straightened along a curve: rows are stations along it, columns offsets across it, and the ridge
 * strength at each, best over several widths.
 *
 * <p>Inside, all stations at one offset lie side by side in memory: there are hundreds of them, so that the processor works on
 * many at once, and hardly more than a dozen offsets.
 */
final class Strip {

    /** Distance between stations and between offsets, pixels. */
    static final double STEP_PX = 1.5;

    private static final double[] WIDTHS_PX = {2, 3, 4.5, 7, 11, 17, 26, 38};

    private final int reach;
    private final int polarity;
    private final int margin;
    private final double[] widest;
    /** Running sums of the picture across the curve, from far on one side to far on the other, of every station. */
    private final float[][] sum;
    /** Ridge strength by station and offset index; offset 0 is at index {@link #reach}. */
    final float[][] strength;

    /**
     * @param from parameter of the first station
     * @param perStation parameter step between stations
     * @param stations how many
     * @param reachPx how far to look to either side, pixels
     * @param widestPx widest picture of the blank to allow for at each station, pixels
     * @param polarity 1 where only what is brighter than its surroundings counts, −1 for darker, 0 where either does
     */
    Strip(
            Plane difference,
            PolynomialCurve curve,
            double from,
            double perStation,
            int stations,
            double reachPx,
            IntToDoubleFunction widestPx,
            int polarity) {
        this.polarity = polarity;
        reach = (int) Math.ceil(reachPx / STEP_PX);
        widest = IntStream.range(0, stations)
                .mapToDouble(widestPx::applyAsDouble)
                .toArray();
        int[] margins = Arrays.stream(widest)
                .mapToInt(w -> (int) Math.ceil(1.9 * w / STEP_PX) + 3)
                .toArray();
        margin = IntStream.of(margins).max().orElse(0);
        sum = new StripSums(difference, curve, from, perStation, stations).across(reach, margins);
        strength = new float[stations][offsets()];
        rate();
    }

    /** Offset of an index, pixels. */
    double offset(double index) {
        return (index - reach) * STEP_PX;
    }

    int offsets() {
        return 2 * reach + 1;
    }

    private void rate() {
        int stations = widest.length;
        float[][] root = new float[WIDTHS_PX.length][];
        for (int w = 0; w < root.length; w++) {
            double width = WIDTHS_PX[w];
            if (Arrays.stream(widest).anyMatch(most -> width <= most)) {
                root[w] = root(width);
            }
        }
        float[] best = new float[stations];
        float[] in = new float[stations];
        float[] step = new float[stations];
        for (int k = 0; k < offsets(); k++) {
            Arrays.fill(best, 0);
            for (int w = 0; w < root.length && root[w] != null; w++) {
                Filter f = new Filter(WIDTHS_PX[w], margin + 0.5 + k);
                f.core(in);
                f.step(in, f.farLeft, f.nearLeft, step);
                f.step(in, f.nearRight, f.farRight, in);
                better(step, in, root[w], best);
            }
            for (int i = 0; i < stations; i++) {
                strength[i][k] = best[i];
            }
        }
    }

    /** What steps at a width count by station: nothing where the blank's picture can't be so wide. */
    private float[] root(double width) {
        float[] out = new float[widest.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = width <= widest[i] ? (float) Math.sqrt(width) : 0;
        }
        return out;
    }

    private void better(float[] a, float[] b, float[] root, float[] best) {
        if (polarity > 0) {
            for (int i = 0; i < best.length; i++) {
                best[i] = Math.max(best[i], root[i] * Math.min(a[i], b[i]));
            }
        } else if (polarity < 0) {
            for (int i = 0; i < best.length; i++) {
                best[i] = Math.max(best[i], root[i] * -Math.max(a[i], b[i]));
            }
        } else {
            for (int i = 0; i < best.length; i++) {
                best[i] = Math.max(best[i], root[i] * Math.max(Math.min(a[i], b[i]), -Math.max(a[i], b[i])));
            }
        }
    }

    /** Width at which the strength at a station and an offset was found, pixels; 0 where there is none. */
    float width(int station, int k) {
        return best(station, k).width;
    }

    /** The largest strength at a station, with its sign: darker than its surroundings is negative. */
    float signed(int station) {
        int k = 0;
        for (int other = 1; other < offsets(); other++) {
            k = strength[station][other] > strength[station][k] ? other : k;
        }
        return signed(station, k);
    }

    /** The strength at a station and an offset, with its sign. */
    float signed(int station, int k) {
        Best best = best(station, k);
        return best.brighter ? best.strength : -best.strength;
    }

    /**
     * The strength at a place, over all widths.
     *
     * @param width at which it was found, pixels; 0 where there is none
     */
    private record Best(float strength, float width, boolean brighter) {}

    private Best best(int station, int k) {
        Best best = new Best(0, 0, false);
        for (int w = 0; w < WIDTHS_PX.length && WIDTHS_PX[w] <= widest[station]; w++) {
            Filter f = new Filter(WIDTHS_PX[w], margin + 0.5 + k);
            float in = (f.right.at(station) - f.left.at(station)) * f.perCore;
            float a = in - (f.nearLeft.at(station) - f.farLeft.at(station)) * f.perFlank;
            float b = in - (f.farRight.at(station) - f.nearRight.at(station)) * f.perFlank;
            float c = polarity > 0 ? Math.min(a, b) : polarity < 0 ? -Math.max(a, b) : (float) lesserStep(a, b);
            float s = (float) Math.sqrt(WIDTHS_PX[w]) * c;
            if (s > best.strength) {
                best = new Best(s, (float) WIDTHS_PX[w], a > 0);
            }
        }
        return best;
    }

    /** The lesser of two steps of one sign, whichever it is; negative where the signs differ: a ridge has both alike. */
    static double lesserStep(double a, double b) {
        return Math.max(Math.min(a, b), -Math.max(a, b));
    }

    /** The running sums at a fractional place. */
    private final class Place {

        final float[] below;
        final float[] above;
        final float share;

        Place(double place) {
            int first = (int) place;
            below = sum[first];
            above = sum[first + 1];
            share = (float) (place - first);
        }

        float at(int i) {
            return below[i] + share * (above[i] - below[i]);
        }
    }

    /** What lies in a ridge of one width, and in a flank on either side of it. */
    private final class Filter {

        final Place farLeft;
        final Place nearLeft;
        final Place left;
        final Place right;
        final Place nearRight;
        final Place farRight;
        final float perCore;
        final float perFlank;

        /** @param middle place of the ridge in the running sums */
        Filter(double width, double middle) {
            double half = width / 2 / STEP_PX;
            double gap = Math.max(0.7, 0.35 * half);
            double flank = Math.max(2, half);
            farLeft = new Place(middle - half - gap - flank);
            nearLeft = new Place(middle - half - gap);
            left = new Place(middle - half);
            right = new Place(middle + half);
            nearRight = new Place(middle + half + gap);
            farRight = new Place(middle + half + gap + flank);
            perCore = (float) (1 / (2 * half));
            perFlank = (float) (1 / flank);
        }

        /** Mean inside, of every station. */
        void core(float[] out) {
            between(left, right, perCore, out);
        }

        /** How much more there is inside than in a flank, of every station. */
        void step(float[] in, Place from, Place to, float[] out) {
            float[] a = from.below;
            float[] b = from.above;
            float[] c = to.below;
            float[] d = to.above;
            float s = from.share;
            float t = to.share;
            for (int i = 0; i < out.length; i++) {
                out[i] = in[i] - (c[i] + t * (d[i] - c[i]) - (a[i] + s * (b[i] - a[i]))) * perFlank;
            }
        }

        private static void between(Place from, Place to, float per, float[] out) {
            float[] a = from.below;
            float[] b = from.above;
            float[] c = to.below;
            float[] d = to.above;
            float s = from.share;
            float t = to.share;
            for (int i = 0; i < out.length; i++) {
                out[i] = (c[i] + t * (d[i] - c[i]) - (a[i] + s * (b[i] - a[i]))) * per;
            }
        }
    }
}
