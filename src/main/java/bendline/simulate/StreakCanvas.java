package bendline.simulate;

/**
 * Gathers light of thin moving things over an exposure. Each sub-frame covers pixels as seen by a lens a little softer
 * than a pixel; sub-frames add up with equal weight; the sum is laid over a frame in linear light (square of the stored
 * value, near enough to a phone's tone curve).
 */
final class StreakCanvas {

    /** Width in pixels of the soft edge: pixel box and lens together. */
    private static final double SOFT = 1.7;

    private final int width;
    private final int height;
    private final float[] alpha;
    private final float[] red;
    private final float[] green;
    private final float[] blue;
    private final float[] cover;
    private final int[] colour;
    private int[] gathered = new int[4096];
    private int gatheredCount;
    private int[] touched = new int[4096];
    private int touchedCount;

    StreakCanvas(int width, int height) {
        this.width = width;
        this.height = height;
        int n = width * height;
        this.alpha = new float[n];
        this.red = new float[n];
        this.green = new float[n];
        this.blue = new float[n];
        this.cover = new float[n];
        this.colour = new int[n];
    }

    /**
     * Covers a round-ended stroke in the current sub-frame; where strokes overlap the fuller one counts.
     *
     * @param x0 start, pixels
     * @param y0 start, pixels
     * @param r0 half-width there, pixels
     * @param x1 end, pixels
     * @param y1 end, pixels
     * @param r1 half-width there, pixels
     * @param rgb colour, 0xRRGGBB
     * @param gloss how much the upper edge is lighter than the lower, 0 to 1
     * @param opacity 0 to 1
     */
    void stroke(
            double x0, double y0, double r0, double x1, double y1, double r1, int rgb, double gloss, double opacity) {
        double reach = Math.max(r0, r1) + SOFT;
        int left = (int) Math.max(0, Math.floor(Math.min(x0, x1) - reach));
        int right = (int) Math.min(width - 1, Math.ceil(Math.max(x0, x1) + reach));
        int top = (int) Math.max(0, Math.floor(Math.min(y0, y1) - reach));
        int bottom = (int) Math.min(height - 1, Math.ceil(Math.max(y0, y1) + reach));
        double dx = x1 - x0;
        double dy = y1 - y0;
        double length2 = dx * dx + dy * dy;
        for (int row = top; row <= bottom; row++) {
            double py = row + 0.5 - y0;
            for (int column = left; column <= right; column++) {
                double px = column + 0.5 - x0;
                double u = length2 > 0 ? Math.max(0, Math.min(1, (px * dx + py * dy) / length2)) : 0;
                double ox = px - u * dx;
                double oy = py - u * dy;
                double r = r0 + u * (r1 - r0);
                double wide = Math.max(r, 0.5 * SOFT);
                double c = (wide - Math.sqrt(ox * ox + oy * oy)) / SOFT + 0.5;
                if (c <= 0) {
                    continue;
                }
                c = Math.min(1, c);
                // With this edge the centre of a thin stroke lies within 0.011 px of where it is drawn.
                c = c * c * (3 - 2 * c) * opacity * Math.min(1, r / (0.5 * SOFT));
                int i = row * width + column;
                if (c > cover[i]) {
                    if (cover[i] == 0) {
                        touch(i);
                    }
                    cover[i] = (float) c;
                    colour[i] = gloss == 0 ? rgb : lit(rgb, 1 - gloss * Math.max(-1, Math.min(1, oy / wide)));
                }
            }
        }
    }

    private void touch(int i) {
        if (touchedCount == touched.length) {
            touched = java.util.Arrays.copyOf(touched, 2 * touchedCount);
        }
        touched[touchedCount++] = i;
    }

    private static int lit(int rgb, double factor) {
        int r = (int) Math.min(255, (rgb >> 16 & 255) * factor);
        int g = (int) Math.min(255, (rgb >> 8 & 255) * factor);
        int b = (int) Math.min(255, (rgb & 255) * factor);
        return r << 16 | g << 8 | b;
    }

    /** Ends a sub-frame; the weights of an exposure's sub-frames add up to 1. */
    void endSubFrame(double weight) {
        for (int k = 0; k < touchedCount; k++) {
            int i = touched[k];
            if (alpha[i] == 0) {
                if (gatheredCount == gathered.length) {
                    gathered = java.util.Arrays.copyOf(gathered, 2 * gatheredCount);
                }
                gathered[gatheredCount++] = i;
            }
            float a = (float) (cover[i] * weight);
            int rgb = colour[i];
            float r = rgb >> 16 & 255;
            float g = rgb >> 8 & 255;
            float b = rgb & 255;
            alpha[i] += a;
            red[i] += a * r * r;
            green[i] += a * g * g;
            blue[i] += a * b * b;
            cover[i] = 0;
        }
        touchedCount = 0;
    }

    /** Lays what was gathered over a frame (blue, green, red bytes, row by row) and forgets it. */
    void layOver(byte[] bgr) {
        for (int k = 0; k < gatheredCount; k++) {
            int i = gathered[k];
            float rest = Math.max(0, 1 - alpha[i]);
            bgr[3 * i] = over(bgr[3 * i], rest, blue[i]);
            bgr[3 * i + 1] = over(bgr[3 * i + 1], rest, green[i]);
            bgr[3 * i + 2] = over(bgr[3 * i + 2], rest, red[i]);
            alpha[i] = 0;
            red[i] = 0;
            green[i] = 0;
            blue[i] = 0;
        }
        gatheredCount = 0;
    }

    private static byte over(byte below, float rest, float light) {
        int v = below & 255;
        return (byte) Math.min(255, Math.round(Math.sqrt(rest * v * v + light)));
    }
}
