package bendline.image;

import bendline.geometry.Homography;
import bendline.geometry.Point;

/** Geometric changes of grey planes. */
public final class Warp {

    /** Pixels of a row that are mapped in one go. */
    private static final int PIECE = 32;

    /** Parts of a pixel to which places are rounded. */
    private static final int PARTS_BITS = 5;

    private static final int PARTS = 1 << PARTS_BITS;

    /** Places along a row are summed up in much smaller units. */
    private static final double ONE = 1L << 40;

    private static final int PART_BITS = 35;
    private static final long HALF_PART = 1L << (PART_BITS - 1);

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
        if (map.equals(Homography.IDENTITY)) {
            for (int row = 0; row < area.height(); row++) {
                int from = (area.top() + row) * source.width() + area.left();
                System.arraycopy(source.pixels(), from, out, row * area.width(), area.width());
            }
        } else {
            Homography back = Homography.shift(area.left() + 0.5, area.top() + 0.5)
                    .then(map.inverse())
                    .then(Homography.shift(-0.5, -0.5));
            Rows rows = new Rows(source, back, out, area.width());
            for (int row = 0; row < area.height(); row++) {
                rows.fill(row);
            }
        }
        return new Luma(area.width(), area.height(), out);
    }

    /**
     * Fills the target row by row, in pieces along which the map is a parabola to far less than the last bit of a grey value.
     *
     * @param back target to source, both with the centre of their first pixel at the origin
     * @param out row by row
     * @param width columns of the target
     */
    private record Rows(Luma source, Homography back, byte[] out, int width) {

        void fill(int row) {
            double right = source.width() - 1 - 1.0 / PARTS;
            double bottom = source.height() - 1 - 1.0 / PARTS;
            Point next = back.apply(new Point(0, row));
            for (int from = 0; from < width; from += PIECE) {
                int to = Math.min(width, from + PIECE);
                Point here = next;
                next = back.apply(new Point(to, row));
                boolean inside = Math.min(here.x(), next.x()) >= 0
                        && Math.max(here.x(), next.x()) < right
                        && Math.min(here.y(), next.y()) >= 0
                        && Math.max(here.y(), next.y()) < bottom;
                if (inside) {
                    Point middle = back.apply(new Point(0.5 * (from + to), row));
                    piece(row * width + from, to - from, here, middle, next);
                } else {
                    for (int x = from; x < to; x++) {
                        out[row * width + x] = repeated(source, back.apply(new Point(x, row)));
                    }
                }
            }
        }

        /** Bilinear values from one place of the source to another, which is left out, at whole parts of a pixel. */
        private void piece(int at, int count, Point first, Point middle, Point past) {
            byte[] pixels = source.pixels();
            byte[] to = out;
            int columns = source.width();
            double bendX = 2 * (first.x() - 2 * middle.x() + past.x()) / ((double) count * count);
            double bendY = 2 * (first.y() - 2 * middle.y() + past.y()) / ((double) count * count);
            long u = (long) (first.x() * ONE) + HALF_PART;
            long v = (long) (first.y() * ONE) + HALF_PART;
            long du = (long) (((past.x() - first.x()) / count - bendX * (count - 1)) * ONE);
            long dv = (long) (((past.y() - first.y()) / count - bendY * (count - 1)) * ONE);
            long ddu = (long) (2 * bendX * ONE);
            long ddv = (long) (2 * bendY * ONE);
            for (int k = 0; k < count; k++) {
                int x = (int) (u >> PART_BITS);
                int y = (int) (v >> PART_BITS);
                int i = (y >> PARTS_BITS) * columns + (x >> PARTS_BITS);
                int upper = between(pixels[i] & 0xff, pixels[i + 1] & 0xff, x & PARTS - 1);
                int lower = between(pixels[i + columns] & 0xff, pixels[i + columns + 1] & 0xff, x & PARTS - 1);
                to[at + k] = rounded(upper, lower, y & PARTS - 1);
                u += du;
                v += dv;
                du += ddu;
                dv += ddv;
            }
        }
    }

    /** The same for one place that may lie outside, where the edge is repeated. */
    private static byte repeated(Luma source, Point p) {
        int right = source.width() - 1;
        int bottom = source.height() - 1;
        int x = (int) Math.rint(Math.max(0, Math.min(right, p.x())) * PARTS);
        int y = (int) Math.rint(Math.max(0, Math.min(bottom, p.y())) * PARTS);
        int left = x >> PARTS_BITS;
        int next = Math.min(right, left + 1);
        int top = y >> PARTS_BITS;
        int below = Math.min(bottom, top + 1);
        int upper = between(source.at(left, top), source.at(next, top), x & PARTS - 1);
        int lower = between(source.at(left, below), source.at(next, below), x & PARTS - 1);
        return rounded(upper, lower, y & PARTS - 1);
    }

    private static int between(int a, int b, int parts) {
        return a * PARTS + parts * (b - a);
    }

    private static byte rounded(int upper, int lower, int parts) {
        return (byte) (between(upper, lower, parts) + PARTS * PARTS / 2 >> 2 * PARTS_BITS);
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
