package bendline.scene;

import bendline.image.Luma;
import java.util.Arrays;
import java.util.List;

/**
 * How much each sample of a clip says about what lies behind the things that move. A rod that rests for most of a clip would
 * be the background's majority if each moment counted the same; what moves is at rest in no place for long. So a sample
 * counts by how much the picture changes about it: a second of waiting says little more than one frame of it.
 *
 * <p>Foliage and sensor noise change every sample alike; that part is taken off.
 */
final class SampleWeights {

    /** Side of the cells that are compared: large enough to average out noise, small enough to be darkened by a thin rod. */
    private static final int CELL = 4;

    /** Grey levels by which a cell must change, over four of the usual change of a cell. */
    private static final double LEAST_CHANGE = 4;

    /** What the stillest sample counts, in those of a usual one. */
    private static final double STILL = 0.1;

    /** Most that one sample counts, in those of a usual one: a jerk of the camera must not decide alone. */
    private static final double MOST = 3;

    private SampleWeights() {}

    /** One positive weight per sample, in order of time; their mean is about 1. */
    static double[] of(List<Luma> samples) {
        int n = samples.size();
        double[] change = new double[n - 1];
        int[] before = cells(samples.get(0));
        for (int k = 0; k + 1 < n; k++) {
            int[] now = cells(samples.get(k + 1));
            change[k] = changed(before, now);
            before = now;
        }
        double[] about = new double[n];
        for (int k = 0; k < n; k++) {
            about[k] = (change[Math.max(0, k - 1)] + change[Math.min(n - 2, k)]) / 2;
        }
        return weights(about);
    }

    private static double[] weights(double[] about) {
        double[] sorted = about.clone();
        Arrays.sort(sorted);
        double least = sorted[sorted.length / 20];
        double usual =
                Arrays.stream(about).map(a -> Math.max(0, a - least)).average().orElse(0);
        // Where hardly anything stands out from the constant change, all count alike.
        double still = STILL * usual + STILL * least + Double.MIN_NORMAL;
        double unit = usual + still;
        return Arrays.stream(about)
                .map(a -> Math.min(MOST, (Math.max(0, a - least) + still) / unit))
                .toArray();
    }

    /** Share of the cells that changed more than cells usually do. */
    private static double changed(int[] a, int[] b) {
        int[] histogram = new int[256 * CELL * CELL + 1];
        for (int i = 0; i < a.length; i++) {
            histogram[Math.abs(a[i] - b[i])]++;
        }
        int seen = 0;
        int median = 0;
        while (seen + histogram[median] <= a.length / 2) {
            seen += histogram[median++];
        }
        double limit = LEAST_CHANGE * Math.max(CELL * CELL, median);
        int over = 0;
        for (int d = (int) Math.ceil(limit); d < histogram.length; d++) {
            over += histogram[d];
        }
        return (double) over / a.length;
    }

    /** Sums of square cells, row by row; a rest at the right and lower edge is left out. */
    private static int[] cells(Luma picture) {
        int columns = picture.width() / CELL;
        int rows = picture.height() / CELL;
        int[] out = new int[columns * rows];
        byte[] p = picture.pixels();
        for (int y = 0; y < rows * CELL; y++) {
            int to = y / CELL * columns;
            int from = y * picture.width();
            for (int x = 0; x < columns * CELL; x++) {
                out[to + x / CELL] += p[from + x] & 0xff;
            }
        }
        return out;
    }
}
