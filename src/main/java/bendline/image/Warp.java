package bendline.image;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.Arrays;

/** Geometric changes of grey planes. */
public final class Warp {

    /** Pixels of a row that are mapped in one go. */
    private static final int PIECE = 32;

    /** Parts of a pixel to which places are rounded. */
    private static final int PARTS = 32;

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
            for (int row = 0; row < area.height(); row++) {
                row(source, back, row, out, area.width());
            }
        }
        return new Luma(area.width(), area.height(), out);
    }

    /**
     * One row of the target, in pieces along which the map is a parabola to far less than the last bit of a grey value.
     *
     * @param back target to source, both with the centre of their first pixel at the origin
     */
    private static void row(Luma source, Homography back, int row, byte[] out, int width) {
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
                piece(source, here, middle, next, out, row * width + from, to - from);
            } else {
                for (int x = from; x < to; x++) {
                    out[row * width + x] = repeated(source, back.apply(new Point(x, row)));
                }
            }
        }
    }

    /** Bilinear values from one place of the source to another, which is left out, at whole parts of a pixel. */
    private static void piece(Luma source, Point first, Point middle, Point past, byte[] out, int at, int count) {
        byte[] pixels = source.pixels();
        int width = source.width();
        double bendX = 2 * (first.x() - 2 * middle.x() + past.x()) / ((double) count * count);
        double bendY = 2 * (first.y() - 2 * middle.y() + past.y()) / ((double) count * count);
        long u = (long) (first.x() * ONE) + HALF_PART;
        long v = (long) (first.y() * ONE) + HALF_PART;
        long du = (long) (((past.x() - first.x()) / count - bendX * (count - 1)) * ONE);
        long dv = (long) (((past.y() - first.y()) / count - bendY * (count - 1)) * ONE);
        long ddu = (long) (2 * bendX * ONE);
        long ddv = (long) (2 * bendY * ONE);
        for (int k = 0; k < count; k++) {
            int column = (int) (u >> PART_BITS);
            int line = (int) (v >> PART_BITS);
            int i = (line >> 5) * width + (column >> 5);
            int a = pixels[i] & 0xff;
            int b = pixels[i + 1] & 0xff;
            int c = pixels[i + width] & 0xff;
            int d = pixels[i + width + 1] & 0xff;
            out[at + k] = mean(a, b, c, d, column & PARTS - 1, line & PARTS - 1);
            u += du;
            v += dv;
            du += ddu;
            dv += ddv;
        }
    }

    /** The same for one place that may lie outside, where the edge is repeated. */
    private static byte repeated(Luma source, Point p) {
        int right = source.width() - 1;
        int bottom = source.height() - 1;
        int column = (int) Math.rint(Math.max(0, Math.min(right, p.x())) * PARTS);
        int line = (int) Math.rint(Math.max(0, Math.min(bottom, p.y())) * PARTS);
        int left = column / PARTS;
        int top = line / PARTS;
        int a = source.at(left, top);
        int b = source.at(Math.min(right, left + 1), top);
        int c = source.at(left, Math.min(bottom, top + 1));
        int d = source.at(Math.min(right, left + 1), Math.min(bottom, top + 1));
        return mean(a, b, c, d, column % PARTS, line % PARTS);
    }

    private static byte mean(int a, int b, int c, int d, int x, int y) {
        int top = a * PARTS + x * (b - a);
        int low = c * PARTS + x * (d - c);
        return (byte) ((top * PARTS + y * (low - top) + PARTS * PARTS / 2) / (PARTS * PARTS));
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
        int width = source.width() / factor;
        int height = source.height() / factor;
        byte[] out = new byte[width * height];
        int area = factor * factor;
        byte[] in = source.pixels();
        int[] sums = new int[width];
        for (int row = 0; row < height; row++) {
            Arrays.fill(sums, 0);
            for (int j = 0; j < factor; j++) {
                int at = (row * factor + j) * source.width();
                for (int column = 0; column < width; column++) {
                    int sum = 0;
                    for (int i = 0; i < factor; i++) {
                        sum += in[at++] & 0xff;
                    }
                    sums[column] += sum;
                }
            }
            for (int column = 0; column < width; column++) {
                out[row * width + column] = (byte) ((sums[column] + area / 2) / area);
            }
        }
        return new Luma(width, height, out);
    }
}
