package bendline.image;

import bendline.geometry.Homography;

/** Geometric changes of grey planes. */
public final class Warp {

    private Warp() {}

    /**
     * The plane as seen in other coordinates: a point {@code p} of the source appears at {@code map.apply(p)}. What lies
     * outside the source repeats its edge.
     */
    public static Luma apply(Luma source, Homography map) {
        return apply(source, map, new Area(0, 0, source.width(), source.height()));
    }

    /** The same, only for an area of the target, whose top left corner becomes the origin. */
    public static Luma apply(Luma source, Homography map, Area area) {
        if (map.equals(Homography.IDENTITY) && area.covers(source)) {
            return source;
        }
        byte[] out = new byte[area.width() * area.height()];
        WarpedRows rows = new WarpedRows(source, map, area);
        float[] levels = new float[area.width()];
        for (int row = 0; row < area.height(); row++) {
            rows.fill(row, levels);
            int at = row * levels.length;
            for (int k = 0; k < levels.length; k++) {
                out[at + k] = (byte) (int) levels[k];
            }
        }
        return new Luma(area.width(), area.height(), out);
    }

    /** The plane reduced by a whole factor, each pixel the mean of a square. */
    public static Luma reduce(Luma source, int factor) {
        if (factor < 1 || factor > source.width() || factor > source.height()) {
            throw new IllegalArgumentException(
                    "cannot reduce a " + source.width() + "x" + source.height() + " plane by " + factor);
        }
        if (factor == 1) {
            return source;
        }
        Luma small = new Luma(
                source.width() / factor,
                source.height() / factor,
                new byte[source.width() / factor * (source.height() / factor)]);
        for (int row = 0; row < small.height(); row++) {
            if (factor == 2) {
                halve(source, small, row);
            } else {
                reduce(source, factor, small, row);
            }
        }
        return small;
    }

    private static void reduce(Luma source, int factor, Luma small, int row) {
        int[] sums = new int[small.width()];
        byte[] in = source.pixels();
        for (int j = 0; j < factor; j++) {
            int at = (row * factor + j) * source.width();
            for (int column = 0; column < sums.length; column++) {
                for (int i = 0; i < factor; i++) {
                    sums[column] += in[at++] & 0xff;
                }
            }
        }
        int area = factor * factor;
        for (int column = 0; column < sums.length; column++) {
            small.pixels()[row * sums.length + column] = (byte) ((sums[column] + area / 2) / area);
        }
    }

    /** The same for the usual factor, a good deal faster without the inner loop. */
    private static void halve(Luma source, Luma small, int row) {
        byte[] in = source.pixels();
        byte[] out = small.pixels();
        int upper = 2 * row * source.width();
        int lower = upper + source.width();
        int to = row * small.width();
        for (int k = 0; k < small.width(); k++) {
            int sum = (in[upper + 2 * k] & 0xff)
                    + (in[upper + 2 * k + 1] & 0xff)
                    + (in[lower + 2 * k] & 0xff)
                    + (in[lower + 2 * k + 1] & 0xff);
            out[to + k] = (byte) (sum + 2 >> 2);
        }
    }
}
