package bendline.scene;

import bendline.image.Area;
import bendline.image.Extremes;
import bendline.image.Luma;
import bendline.image.Plane;
import java.util.Arrays;
import java.util.List;

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

    private static final int FEWEST = 3;
    private static final int GAIN_SAMPLES = 6000;
    /** The share of frames whose straying the noise covers; a blank passes over a pixel in far fewer than the rest. */
    private static final double COVERED = 0.8;

    /** Says whether something that moves is known to lie over a pixel of a sample. */
    interface Covered {
        boolean at(int sample, int pixel);
    }

    /**
     * The median over frames that already lie in reference coordinates.
     *
     * @param samples at least three, spread over the clip
     * @param weight what each sample counts, positive
     * @param covered what of the samples is left out, where enough is left
     */
    static Background of(List<Luma> samples, double[] weight, Covered covered) {
        if (samples.size() < FEWEST) {
            throw new IllegalArgumentException("a background needs three frames, got " + samples.size());
        }
        int width = samples.get(0).width();
        int height = samples.get(0).height();
        float[] median = new float[width * height];
        WeightedLevels levels = new WeightedLevels();
        byte[][] pixels = samples.stream().map(Luma::pixels).toArray(byte[][]::new);
        boolean[] counts = new boolean[pixels.length];
        for (int i = 0; i < median.length; i++) {
            bare(i, covered, counts);
            for (int k = 0; k < pixels.length; k++) {
                if (counts[k]) {
                    levels.add(pixels[k][i] & 0xff, weight[k]);
                }
            }
            median[i] = levels.quantileAndClear(0.5);
        }
        Plane middle = new Plane(width, height, median);
        Plane low = Extremes.lowest(middle);
        Plane high = Extremes.highest(middle);
        float[] noise = new float[width * height];
        for (int i = 0; i < noise.length; i++) {
            bare(i, covered, counts);
            for (int k = 0; k < pixels.length; k++) {
                if (counts[k]) {
                    int stray = Math.round(Math.abs(stray(pixels[k][i] & 0xff, low.values()[i], high.values()[i])));
                    levels.add(stray, weight[k]);
                }
            }
            noise[i] = Math.max(QUIET, levels.quantileAndClear(COVERED));
        }
        return new Background(middle, low, high, new Plane(width, height, noise));
    }

    /** Which samples show a pixel bare; all, where fewer than three do. */
    private static void bare(int pixel, Covered covered, boolean[] counts) {
        int bare = 0;
        for (int k = 0; k < counts.length; k++) {
            counts[k] = !covered.at(k, pixel);
            bare += counts[k] ? 1 : 0;
        }
        if (bare < FEWEST) {
            Arrays.fill(counts, true);
        }
    }

    private static float stray(float value, float low, float high) {
        return value < low ? value - low : value > high ? value - high : 0;
    }

    /**
     * How far each pixel of a frame is from the background, in units of the noise, after the frame's overall gain and
     * offset have been taken out; darker is negative.
     */
    public Plane difference(Luma inReference) {
        float[] gain = gain(inReference);
        float[] out = new float[inReference.pixels().length];
        float[] lo = low.values();
        float[] hi = high.values();
        float[] s = noise.values();
        byte[] p = inReference.pixels();
        float scale = 1 / gain[0];
        for (int i = 0; i < out.length; i++) {
            float value = ((p[i] & 0xff) - gain[1]) * scale;
            out[i] = value < lo[i] ? (value - lo[i]) / s[i] : value > hi[i] ? (value - hi[i]) / s[i] : 0;
        }
        return new Plane(median.width(), median.height(), out);
    }

    /** The part of this background inside an area, whose corner becomes the origin. */
    public Background cut(Area area) {
        return new Background(median.cut(area), low.cut(area), high.cut(area), noise.cut(area));
    }

    /** Least squares of frame = gain · background + offset over quiet pixels, refitted without what has moved. */
    private float[] gain(Luma frame) {
        int step = Math.max(1, frame.pixels().length / GAIN_SAMPLES);
        double gain = 1;
        double offset = 0;
        for (int round = 0; round < 3; round++) {
            double n = 0;
            double sx = 0;
            double sy = 0;
            double sxx = 0;
            double sxy = 0;
            double limit = round == 0 ? 40 : 4;
            for (int i = step / 2; i < frame.pixels().length; i += step) {
                double x = median.values()[i];
                double y = frame.pixels()[i] & 0xff;
                double s = noise.values()[i];
                if (Math.abs(y - gain * x - offset) < limit * s + (round == 0 ? 20 : 0)) {
                    double w = 1 / (s * s);
                    n += w;
                    sx += w * x;
                    sy += w * y;
                    sxx += w * x * x;
                    sxy += w * x * y;
                }
            }
            double det = n * sxx - sx * sx;
            if (n == 0 || det < 1e-9 * n * n) {
                return new float[] {1, 0};
            }
            gain = (n * sxy - sx * sy) / det;
            offset = (sy - gain * sx) / n;
        }
        return gain > 0.5 && gain < 2 ? new float[] {(float) gain, (float) offset} : new float[] {1, 0};
    }
}
