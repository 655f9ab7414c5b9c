package bendline.image;

/**
 * A plane of float values on the Java heap, row by row from the top left; the centre of the first pixel is at (0.5, 0.5).
 * The array is shared, not copied.
 *
 * @param width columns
 * @param height rows
 * @param values {@code width · height} values; NaN where the plane has none
 */
public record Plane(int width, int height, float[] values) {

    /** Checks that the array fits the size. */
    public Plane {
        if (width <= 0 || height <= 0 || values.length != width * height) {
            throw new IllegalArgumentException(
                    "a " + width + "x" + height + " plane does not fit " + values.length + " values");
        }
    }

    /** A plane of zeros. */
    public static Plane zeros(int width, int height) {
        return new Plane(width, height, new float[width * height]);
    }

    /** A copy of the part inside an area, whose corner becomes the origin. */
    public Plane cut(Area area) {
        float[] out = new float[area.width() * area.height()];
        for (int row = 0; row < area.height(); row++) {
            System.arraycopy(values, (area.top() + row) * width + area.left(), out, row * area.width(), area.width());
        }
        return new Plane(area.width(), area.height(), out);
    }

    /** Value at a column and row inside the plane. */
    public float at(int column, int row) {
        return values[row * width + column];
    }

    /** Bilinear value at a position in pixels; NaN outside the plane. */
    public float sample(double x, double y) {
        double u = x - 0.5;
        double v = y - 0.5;
        int column = (int) u;
        int row = (int) v;
        if (!(u >= 0 && v >= 0) || column + 1 >= width || row + 1 >= height) {
            return Float.NaN;
        }
        float fx = (float) (u - column);
        float fy = (float) (v - row);
        int i = row * width + column;
        float top = values[i] + fx * (values[i + 1] - values[i]);
        float bottom = values[i + width] + fx * (values[i + width + 1] - values[i + width]);
        return top + fy * (bottom - top);
    }
}
