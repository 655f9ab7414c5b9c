package bendline.simulate;

/** What lens and picture processing of a phone do to a still scene: a soft point, a little sharpening, darker corners. */
final class Lens {

    private static final double CORNERS = 0.10;

    private Lens() {}

    static void soften(Paint paint) {
        int[] rgb = paint.rgb;
        int w = paint.width;
        int[] above = java.util.Arrays.copyOf(rgb, w);
        for (int y = 0; y < paint.height; y++) {
            int[] here = java.util.Arrays.copyOfRange(rgb, y * w, y * w + w);
            int below = Math.min(paint.height - 1, y + 1) * w;
            for (int x = 0; x < w; x++) {
                int left = here[Math.max(0, x - 1)];
                int right = here[Math.min(w - 1, x + 1)];
                rgb[y * w + x] =
                        Paint.lit(average(here[x], left, right, above[x], rgb[below + x]), corner(paint, x, y));
            }
            above = here;
        }
    }

    private static int average(int middle, int a, int b, int c, int d) {
        int out = 0;
        for (int shift = 0; shift <= 16; shift += 8) {
            int sum = 4 * (middle >> shift & 255)
                    + (a >> shift & 255)
                    + (b >> shift & 255)
                    + (c >> shift & 255)
                    + (d >> shift & 255);
            out |= ((sum + 4) >> 3) << shift;
        }
        return out;
    }

    private static double corner(Paint paint, int x, int y) {
        double dx = 2.0 * x / paint.width - 1;
        double dy = 2.0 * y / paint.height - 1;
        double r2 = 0.5 * (dx * dx + dy * dy);
        return 1 - CORNERS * r2 * r2;
    }
}
