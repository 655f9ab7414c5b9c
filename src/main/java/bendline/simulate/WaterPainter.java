package bendline.simulate;

/** The lake: mirrored sky and far shore broken up by ripples, darker and browner where one looks down into it. */
final class WaterPainter {

    private static final int BODY = 0x3d4436;

    private final Paint paint;
    private final PhoneCamera camera;
    private final Daylight light;
    private final Noise noise;
    private final Shore shore;

    WaterPainter(Paint paint, PhoneCamera camera, Daylight light, Shore shore, long seed) {
        this.paint = paint;
        this.camera = camera;
        this.light = light;
        this.shore = shore;
        this.noise = new Noise(seed + 37);
    }

    /** Paints all ground up to the far shore as water; the bank is painted over it later. */
    void paint() {
        int[] above = paint.rgb.clone();
        for (int y = 0; y < paint.height; y++) {
            for (int x = 0; x < paint.width; x++) {
                double px = x - paint.margin + 0.5;
                double py = y - paint.margin + 0.5;
                double[] at = camera.ground(px, py, Shore.WATER_Y);
                if (at == null || at[1] < shore.farZ()) {
                    continue;
                }
                int i = y * paint.width + x;
                paint.rgb[i] = colour(above, x, y, at, camera.horizon(px) + paint.margin);
                paint.water[i] = 1;
            }
        }
    }

    private int colour(int[] above, int x, int y, double[] at, double horizon) {
        double down = y - horizon;
        double range = Math.hypot(at[0], at[1] - 12);
        // Waves: long across the view, short along it; each octave fades where it falls below a pixel.
        double near = Math.max(0.15, Math.min(1, 14 / range));
        double w1 = noise.at(at[0] * 0.55, at[1] * 2.2) - 0.5;
        double w2 = noise.at(at[0] * 1.7 + 9, at[1] * 6.5) - 0.5;
        double w3 = noise.at(at[0] * 5 + 31, at[1] * 17) - 0.5;
        double slope = w1 * 0.9 + w2 * (0.4 + 0.6 * near) + w3 * near;
        double gust = noise.cloud(at[0] * 0.03, at[1] * 0.09, 3);
        double rough = 0.5 + 0.9 * Noise.step(0.40, 0.62, gust);
        double lift = slope * rough * (5 + 0.16 * down);
        int mirrorY = (int) Math.round(horizon + mirrorShift(down) - down - Math.abs(lift) * 1.2 + lift * 1.6);
        int mirrorX = (int) Math.round(x + (w2 + w1) * rough * (2 + 0.02 * down));
        mirrorY = Math.max(0, Math.min((int) horizon - 1, mirrorY));
        mirrorX = Math.max(0, Math.min(paint.width - 1, mirrorX));
        int mirrored = above[mirrorY * paint.width + mirrorX];
        double steep = Math.min(1, down / (0.9 * paint.height));
        double reflect = 0.82 - 0.62 * Math.pow(steep, 0.7) - 0.22 * Math.max(-0.6, slope * rough);
        int body = light.on(BODY, 0.5 + 0.4 * slope);
        int colour = Paint.mix(body, mirrored, Math.max(0.12, Math.min(0.92, reflect)));
        return Paint.lit(colour, 0.94 + 0.20 * slope * rough);
    }

    /** The far shore stands a little below the horizon, and so does the fold of the mirror. */
    private double mirrorShift(double down) {
        return Math.min(down, shore.foldPx());
    }
}
