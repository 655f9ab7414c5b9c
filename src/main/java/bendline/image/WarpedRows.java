package bendline.image;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A grey plane as seen in other coordinates, row by row: each value is bilinear between four pixels, at a place rounded to a 32nd
 * of a pixel, and rounded to whole levels. What lies outside the source repeats its edge.
 *
 * <p>A camera's motion moves places on by nearly one pixel from column to column, so that for hundreds of columns whole pixels and
 * rows stay in step and only the parts of a pixel change. Such pieces are done with floats, which hold these numbers exactly, in
 * short loops, each of which the compiler makes to take many columns at a time; it would not a longer one. Not thread-safe.
 */
public final class WarpedRows {

    /** Longest piece of a row along which the map is taken for a parabola, far better than to a part of a pixel. */
    private static final int LONGEST = 128;

    /** Shorter pieces are done column by column. */
    private static final int SHORTEST = 8;

    /** Parts of a pixel to which places are rounded. */
    private static final int PARTS = 32;

    /** Added and taken off again, it leaves a small float rounded to a whole number. */
    private static final float ROUNDING = 3 << 22;

    /** Halves are rounded up: less than the least step that two parts of a pixel make. */
    private static final float HALF_UP = 0.25f / (PARTS * PARTS);

    private static final float[] INDEX = new float[LONGEST];

    static {
        for (int i = 0; i < LONGEST; i++) {
            INDEX[i] = i;
        }
    }

    private final Luma source;
    private final Area area;
    private final boolean still;
    /** From target to source, both with the centre of their first pixel at the origin. */
    private final Homography back;

    /** Rows of the source as floats, of which those that one row of the target crosses have places of their own; and which they are. */
    private final float @Nullable [][] rows;

    private final int[] held;
    private final float[] parts = new float[LONGEST];
    private final float[] next = new float[LONGEST];
    private final float[] above = new float[LONGEST];
    private final float[] below = new float[LONGEST];

    /**
     * @param map source to target
     * @param area part of the target, whose top left corner becomes the origin
     */
    public WarpedRows(Luma source, Homography map, Area area) {
        this.source = source;
        this.area = area;
        still = map.equals(Homography.IDENTITY);
        back = Homography.shift(area.left() + 0.5, area.top() + 0.5)
                .then(map.inverse())
                .then(Homography.shift(-0.5, -0.5));
        rows = new float[still ? 0 : Integer.highestOneBit(2 * crossed())][];
        held = new int[rows.length];
        Arrays.fill(held, -1);
    }

    /** Rows of the source that a row of the target crosses, with some to spare. */
    private int crossed() {
        int most = 0;
        for (int row = 0; row < area.height(); row += Math.max(1, area.height() - 1)) {
            Point left = back.apply(new Point(0, row));
            Point right = back.apply(new Point(area.width(), row));
            most = (int) Math.min(source.height(), Math.max(most, Math.abs(right.y() - left.y())));
        }
        return most + 4;
    }

    /** Columns. */
    public int width() {
        return area.width();
    }

    /** Rows. */
    public int height() {
        return area.height();
    }

    /** The level at a column and row, 0 to 255. */
    public int at(int column, int row) {
        return still ? source.at(area.left() + column, area.top() + row) : level(back.apply(new Point(column, row)));
    }

    /** Writes the levels of a row, 0 to 255, from the start of an array. */
    public void fill(int row, float[] out) {
        if (still) {
            floats(area.top() + row, area.left(), area.width(), out);
            return;
        }
        Point past = back.apply(new Point(0, row));
        for (int from = 0; from < area.width(); from += LONGEST) {
            int to = Math.min(area.width(), from + LONGEST);
            Point first = past;
            Point middle = back.apply(new Point(0.5 * (from + to), row));
            past = back.apply(new Point(to, row));
            Drift x = Drift.of(first.x(), middle.x(), past.x(), to - from, 1);
            Drift y = Drift.of(first.y(), middle.y(), past.y(), to - from, 0);
            fill(row, from, to, x, y, out);
        }
    }

    /** A piece, in pieces along which whole pixels stay in step. */
    private void fill(int row, int from, int to, Drift across, Drift down, float[] out) {
        Drift x = across;
        Drift y = down;
        int at = from;
        while (at < to) {
            int count = Math.min(x.stays(to - at), y.stays(to - at));
            if (count >= SHORTEST && x.inside(count, source.width()) && y.inside(0, source.height())) {
                inStep(x, y, at, count, out);
            } else {
                count = Math.min(SHORTEST, to - at);
                for (int k = at; k < at + count; k++) {
                    out[k] = level(back.apply(new Point(k, row)));
                }
            }
            at += count;
            x = x.after(count);
            y = y.after(count);
        }
    }

    /**
     * How places move on along a piece, besides what columns do.
     *
     * @param perColumn what columns do, pixels
     * @param whole pixels before the first place
     * @param first what is left of it, parts of a pixel
     * @param slope what it changes by a column, parts of a pixel
     * @param bend and by a column's square
     */
    private record Drift(int perColumn, int whole, double first, double slope, double bend) {

        static Drift of(double first, double middle, double past, int count, int perColumn) {
            double bend = 2 * (first - 2 * middle + past) / ((double) count * count);
            double slope = (past - first) / count - bend * count - perColumn;
            return from(perColumn, first, PARTS * slope, PARTS * bend);
        }

        private static Drift from(int perColumn, double place, double slope, double bend) {
            // All parts of one pixel are none of the next: whichever leaves more room for what comes.
            int whole = (int) Math.floor(place + Math.copySign(0.5 / PARTS, slope));
            return new Drift(perColumn, whole, PARTS * (place - whole), slope, bend);
        }

        /** The same from a later column on. */
        Drift after(int columns) {
            double place = whole + perColumn * columns + at(columns) / PARTS;
            return from(perColumn, place, slope + 2 * bend * columns, bend);
        }

        private double at(int column) {
            return first + column * (slope + column * bend);
        }

        /** In how many columns of so many places lie between the same whole pixels. */
        int stays(int count) {
            if (between(at(count - 1))) {
                return count;
            }
            int columns = (int) ((slope > 0 ? PARTS - first : -first) / slope);
            return columns > 0 && columns < count && between(at(columns - 1)) ? columns : 1;
        }

        private static boolean between(double part) {
            return part > -0.499 && part < PARTS + 0.499;
        }

        boolean inside(int count, int size) {
            return whole >= 0 && whole + perColumn * count + 1 < size;
        }
    }

    private void inStep(Drift x, Drift y, int from, int count, float[] out) {
        parts(x, count);
        between(row(y.whole), x.whole, count, above);
        between(row(y.whole + 1), x.whole, count, below);
        parts(y, count);
        mixed(above, below, parts, count);
        System.arraycopy(above, 0, out, from, count);
    }

    private void parts(Drift drift, int count) {
        float first = (float) drift.first;
        float slope = (float) drift.slope;
        float bend = (float) drift.bend;
        float[] index = INDEX;
        float[] out = parts;
        for (int k = 0; k < count; k++) {
            float i = index[k];
            out[k] = first + i * (slope + i * bend) + ROUNDING - ROUNDING;
        }
    }

    private void between(float[] row, int at, int count, float[] out) {
        System.arraycopy(row, at, out, 0, count);
        System.arraycopy(row, at + 1, next, 0, count);
        between(out, next, parts, count);
    }

    private static void between(float[] out, float[] next, float[] parts, int count) {
        for (int k = 0; k < count; k++) {
            float level = out[k];
            out[k] = level * PARTS + parts[k] * (next[k] - level);
        }
    }

    private static void mixed(float[] above, float[] below, float[] parts, int count) {
        for (int k = 0; k < count; k++) {
            float a = above[k];
            above[k] = (a * PARTS + parts[k] * (below[k] - a)) * (1f / (PARTS * PARTS)) + HALF_UP + ROUNDING - ROUNDING;
        }
    }

    private float[] row(int y) {
        int place = y % rows.length;
        if (held[place] != y) {
            if (rows[place] == null) {
                rows[place] = new float[source.width()];
            }
            floats(y, 0, source.width(), rows[place]);
            held[place] = y;
        }
        return rows[place];
    }

    private void floats(int row, int left, int count, float[] out) {
        byte[] p = source.pixels();
        int at = row * source.width() + left;
        for (int k = 0; k < count; k++) {
            out[k] = p[at + k] & 0xff;
        }
    }

    /** The level at one place, which may lie outside. */
    private int level(Point p) {
        int right = source.width() - 1;
        int bottom = source.height() - 1;
        int x = (int) Math.rint(Math.max(0, Math.min(right, p.x())) * PARTS);
        int y = (int) Math.rint(Math.max(0, Math.min(bottom, p.y())) * PARTS);
        int left = x / PARTS;
        int top = y / PARTS;
        int upper = between(source, left, top, x % PARTS);
        int lower = between(source, left, Math.min(bottom, top + 1), x % PARTS);
        return (between(upper, lower, y % PARTS) + PARTS * PARTS / 2) / (PARTS * PARTS);
    }

    private static int between(Luma source, int left, int row, int parts) {
        return between(source.at(left, row), source.at(Math.min(source.width() - 1, left + 1), row), parts);
    }

    private static int between(int a, int b, int parts) {
        return a * PARTS + parts * (b - a);
    }
}
