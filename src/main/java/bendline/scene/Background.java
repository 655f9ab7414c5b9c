package bendline.scene;

import bendline.image.Area;
import bendline.image.Extremes;
import bendline.image.Luma;
import bendline.image.Plane;
import bendline.image.PlanePool;
import bendline.image.WarpedRows;
import java.util.List;
import java.util.function.IntUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * What the reference picture looks like when nothing moves in it, and how much it flickers.
 *
 * <p>Registration is never better than a few tenths of a pixel, and in foliage or reeds that alone makes large
 * differences. So a frame is compared not with one value but with the range that the background takes in the 3 × 3
 * neighbourhood: only what is darker or brighter than everything near counts.
 *
 * @param median grey value
 * @param low smallest median in the neighbourhood
 * @param high largest median in the neighbourhood
 * @param noise how far frames usually stray out of that range, at least {@link #QUIET}
 */
public record Background(Plane median, Plane low, Plane high, Plane noise) {

    /** Grey levels; below this, compression and sensor noise make every difference doubtful. */
    public static final float QUIET = 1.5f;

    private static final int GAIN_SAMPLES = 6000;

    /** What exposure does to a clip on its way; beyond, the fit has failed. */
    private static final double LEAST_GAIN = 0.4;

    private static final double MOST_GAIN = 2.5;

    /**
     * A sample that is brighter or darker by more than this, in the middle of its grey levels, is brought to the rest. Smaller
     * drifts are in the noise, and a slope fitted to shaken foliage is less sure than they are.
     */
    private static final double STEADY_LEVELS = 12;

    /**
     * The median over frames that already lie in reference coordinates.
     *
     * @param samples at least three, spread over the clip
     * @param weight what each sample counts, positive
     * @param covered what of the samples is left out, where enough is left
     */
    static Background of(List<Luma> samples, double[] weight, SampleStack.Covered covered) {
        if (samples.size() < SampleStack.FEWEST) {
            throw new IllegalArgumentException("a background needs three frames, got " + samples.size());
        }
        int width = samples.get(0).width();
        int height = samples.get(0).height();
        byte[][] pixels = samples.stream().map(Luma::pixels).toArray(byte[][]::new);
        SampleStack stack = new SampleStack(pixels, weight, covered);
        float[] median = stack.median();
        if (levelled(pixels, median)) {
            median = stack.median();
        }
        Plane middle = new Plane(width, height, median);
        Plane low = Extremes.lowest(middle);
        Plane high = Extremes.highest(middle);
        float[] noise = stack.noise(low.values(), high.values());
        return new Background(middle, low, high, new Plane(width, height, noise));
    }

    /**
     * Brings samples of another exposure to that of the median, or the flicker would be all that the background shows.
     *
     * @return whether any was changed
     */
    private static boolean levelled(byte[][] pixels, float[] median) {
        boolean any = false;
        double middle = 0;
        for (float level : median) {
            middle += level / median.length;
        }
        for (int k = 0; k < pixels.length; k++) {
            byte[] sample = pixels[k];
            float[] gain = gain(median, null, i -> sample[i] & 0xff);
            if (Math.abs((gain[0] - 1) * middle + gain[1]) > STEADY_LEVELS) {
                byte[] level = new byte[median.length];
                for (int i = 0; i < level.length; i++) {
                    int value = Math.round(((pixels[k][i] & 0xff) - gain[1]) / gain[0]);
                    level[i] = (byte) Math.max(0, Math.min(255, value));
                }
                pixels[k] = level;
                any = true;
            }
        }
        return any;
    }

    /**
     * How far each pixel of a frame is from the background, in units of the noise, after the frame's overall gain and
     * offset have been taken out; darker is negative.
     *
     * @param pool from which the plane is taken
     */
    Plane difference(WarpedRows inReference, PlanePool pool) {
        float[] gain = gain(inReference);
        Plane difference = pool.take(inReference.width(), inReference.height());
        float[] out = difference.values();
        float[] row = new float[inReference.width()];
        // Row by row, so that it stays close to the processor between the steps.
        for (int y = 0; y < inReference.height(); y++) {
            inReference.fill(y, row);
            int from = y * row.length;
            System.arraycopy(row, 0, out, from, row.length);
            level(out, from, from + row.length, gain[1], 1 / gain[0]);
            strays(out, from, from + row.length);
        }
        return difference;
    }

    private static void level(float[] values, int from, int to, float offset, float scale) {
        for (int i = from; i < to; i++) {
            values[i] = (values[i] - offset) * scale;
        }
    }

    private void strays(float[] values, int from, int to) {
        float[] lo = low.values();
        float[] hi = high.values();
        float[] s = noise.values();
        for (int i = from; i < to; i++) {
            values[i] = (Math.min(0, values[i] - lo[i]) + Math.max(0, values[i] - hi[i])) / s[i];
        }
    }

    /** The part of this background inside an area, whose corner becomes the origin. */
    public Background cut(Area area) {
        return new Background(median.cut(area), low.cut(area), high.cut(area), noise.cut(area));
    }

    /** Gain and offset of a frame. */
    private float[] gain(WarpedRows inReference) {
        int width = inReference.width();
        return gain(median.values(), noise.values(), i -> inReference.at(i % width, i / width));
    }

    /** Least squares of frame = gain · background + offset over quiet pixels, refitted without what has moved. */
    private static float[] gain(float[] median, float @Nullable [] noise, IntUnaryOperator frame) {
        int step = Math.max(1, median.length / GAIN_SAMPLES);
        int samples = (median.length - step / 2 + step - 1) / step;
        float[] behind = new float[samples];
        int[] now = new int[samples];
        float[] usual = new float[samples];
        for (int k = 0, i = step / 2; k < samples; k++, i += step) {
            behind[k] = median[i];
            now[k] = frame.applyAsInt(i);
            usual[k] = noise == null ? QUIET : noise[i];
        }
        double gain = 1;
        double offset = 0;
        for (int round = 0; round < 3; round++) {
            double n = 0;
            double sx = 0;
            double sy = 0;
            double sxx = 0;
            double sxy = 0;
            double limit = round == 0 ? 40 : 4;
            for (int k = 0; k < samples; k++) {
                double x = behind[k];
                double y = now[k];
                double s = usual[k];
                if (Math.abs(y - gain * x - offset) < limit * s + (round == 0 ? 20 : 0)) {
                    double w = 1 / (s * s);
                    n += w;
                    sx += w * x;
                    sy += w * y;
                    sxx += w * x * x;
                    sxy += w * x * y;
                }
            }
            if (n == 0) {
                return new float[] {1, 0};
            }
            double det = n * sxx - sx * sx;
            double slope = (n * sxy - sx * sy) / det;
            // A scene without light and dark parts tells no gain, only how much brighter it has become.
            gain = slope > LEAST_GAIN && slope < MOST_GAIN ? slope : 1;
            offset = (sy - gain * sx) / n;
        }
        return new float[] {(float) gain, (float) offset};
    }
}
