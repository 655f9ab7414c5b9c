package bendline.simulate;

/** Sky and clouds. */
final class SkyPainter {

    private final PhoneCamera camera;
    private final Daylight light;
    private final Noise noise;
    private final double focal;

    SkyPainter(Scenario scenario, PhoneCamera camera, Daylight light) {
        this.camera = camera;
        this.light = light;
        this.noise = new Noise(scenario.seed() + 11);
        this.focal = scenario.camera().focalPx();
    }

    void paint(Paint paint) {
        for (int y = 0; y < paint.height; y++) {
            for (int x = 0; x < paint.width; x++) {
                double px = x - paint.margin;
                double rise = (camera.horizon(px) - (y - paint.margin)) / focal;
                if (rise > -0.01) {
                    paint.rgb[y * paint.width + x] = colour(px / focal, Math.max(0, rise));
                }
            }
        }
    }

    private int colour(double across, double rise) {
        double up = Noise.step(0, 0.75, rise);
        int clear = Paint.mix(light.horizon(), light.zenith(), Math.pow(up, 0.7));
        double side = Math.exp(-Math.pow((across - 0.15) / 0.5, 2)) * Math.exp(-rise / 0.10);
        clear = Paint.mix(clear, light.glow(), 0.8 * side);
        // A layer of cloud overhead: with the distance it closes up and flattens.
        double far = 1 / (rise + 0.10);
        double u = 2.0 * across * far + 3;
        double v = 1.7 * far;
        double warp = noise.cloud(0.6 * u, 0.6 * v, 3) - 0.5;
        double thick = noise.cloud(u + 0.9 * warp, v + 0.7 * warp, 7);
        double toSun = noise.cloud(u + 0.9 * warp + 0.10, v + 0.7 * warp - 0.16, 4);
        double edge = 0.72 - 0.42 * light.cover();
        double fleece = 0.10 * (noise.cloud(6 * u, 6 * v, 3) - 0.5);
        double cover = Noise.step(edge, edge + 0.13, thick + fleece);
        double shade = Noise.step(-0.12, 0.16, thick - toSun + 0.02 + fleece);
        int cloud = Paint.mix(light.cloudDark(), light.cloudLit(), 0.25 + 0.75 * shade);
        cloud = Paint.mix(cloud, light.cloudDark(), 0.5 * Noise.step(0.12, 0.30, thick - edge));
        double fade = 1 - Math.exp(-rise / 0.045);
        return Paint.mix(clear, cloud, cover * (0.35 + 0.6 * fade));
    }
}
