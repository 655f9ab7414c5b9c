package bendline.image;

/** Smallest and largest values in the 3 × 3 neighbourhood of each pixel; at the edges, of what there is of it. */
public final class Extremes {

    private Extremes() {}

    /** Smallest value near each pixel. */
    public static Plane lowest(Plane plane) {
        return spread(plane, -1);
    }

    /** Largest value near each pixel. */
    public static Plane highest(Plane plane) {
        return spread(plane, 1);
    }

    /** The minimum is the maximum of the negative; the box is taken along rows, then along columns. */
    private static Plane spread(Plane plane, float sign) {
        int width = plane.width();
        int height = plane.height();
        float[] in = plane.values();
        float[] across = new float[in.length];
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                int i = row * width + column;
                float best = sign * in[i];
                best = column > 0 ? Math.max(best, sign * in[i - 1]) : best;
                best = column + 1 < width ? Math.max(best, sign * in[i + 1]) : best;
                across[i] = best;
            }
        }
        float[] out = new float[in.length];
        for (int i = 0; i < in.length; i++) {
            float best = across[i];
            best = i >= width ? Math.max(best, across[i - width]) : best;
            best = i + width < in.length ? Math.max(best, across[i + width]) : best;
            out[i] = sign * best;
        }
        return new Plane(width, height, out);
    }
}
