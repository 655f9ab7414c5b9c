package bendline.simulate;

import bendline.geometry.Point;
import java.util.Random;

/** The near bank: worn grass, earth at the edge, blades, and the shadow at the angler's feet. */
final class BankPainter {

    private static final int GRASS = 0x66753c;
    private static final int DRY = 0x8d8655;
    private static final int LUSH = 0x4c6430;
    private static final int EARTH = 0x6b5a45;
    private static final int STONE = 0x8a8378;

    private final Paint paint;
    private final PhoneCamera camera;
    private final Daylight light;
    private final Shore shore;
    private final Noise noise;
    private final Random random;
    private final int scale;

    BankPainter(Paint paint, PhoneCamera camera, Daylight light, Shore shore, long seed) {
        this.paint = paint;
        this.camera = camera;
        this.light = light;
        this.shore = shore;
        this.noise = new Noise(seed + 53);
        this.random = new Random(seed ^ 0xba2cL);
        this.scale = Math.max(paint.width, paint.height);
    }

    void paint(boolean shadow) {
        for (int y = 0; y < paint.height; y++) {
            for (int x = 0; x < paint.width; x++) {
                double[] at = camera.ground(x - paint.margin + 0.5, y - paint.margin + 0.5, 0);
                if (at == null || at[1] < -40) {
                    continue;
                }
                double in = shore.onBank(at[0], at[1]);
                if (in > -0.12) {
                    int i = y * paint.width + x;
                    paint.rgb[i] = ground(at[0], at[1], in, shadow);
                    paint.water[i] = 0;
                }
            }
        }
        blades();
    }

    private int ground(double x, double z, double in, boolean shadow) {
        double patch = noise.cloud(x * 0.5, z * 0.5, 4);
        double tuft = noise.cloud(x * 4 + 7, z * 3.0, 3);
        double fine = noise.cloud(x * 30, z * 16, 2);
        int grass = Paint.mix(Paint.mix(GRASS, DRY, Noise.step(0.42, 0.70, patch)), LUSH, Noise.step(0.5, 0.25, patch));
        int colour = light.on(grass, 0.45 + 1.1 * (tuft - 0.5) + 0.9 * (fine - 0.5));
        double worn = Math.exp(-(x * x * 0.45 + z * z * 1.5)) * 0.9 + Noise.step(0.55, 0.05, in) * 0.8;
        worn *= 0.5 + 0.9 * noise.cloud(x * 2.2, z * 2.2, 3);
        int earth = light.on(Paint.mix(EARTH, STONE, Noise.step(0.55, 0.75, fine)), 0.35 + 0.9 * (fine - 0.4));
        colour = Paint.mix(colour, earth, Noise.step(0.30, 0.62, worn));
        if (in < 0.06) {
            colour = Paint.mix(colour, light.on(0x3c3427, 0.25), 0.85 * Noise.step(0.06, -0.12, in));
        }
        if (shadow) {
            double dx = (x + 0.05) / 0.55;
            double dz = (z - 0.05) / 0.22;
            double dark = Math.exp(-(dx * dx + dz * dz));
            double cast = Math.exp(-Math.pow((x + 0.35 * z - 0.05) / 0.30, 2))
                    * Noise.step(-2.2, -0.1, z)
                    * (z < 0.1 ? 1 : 0);
            colour = Paint.lit(colour, 1 - 0.5 * dark - 0.3 * light.sun() * cast);
        }
        return colour;
    }

    /** Blades of grass, small far off and long near by, taller along the edge of the water. */
    private void blades() {
        int count = paint.width * paint.height / 55;
        for (int i = 0; i < count; i++) {
            double px = random.nextDouble() * paint.width - paint.margin;
            double py = (1 - Math.pow(random.nextDouble(), 0.8)) * (paint.height - horizonRow())
                    + horizonRow()
                    - paint.margin;
            double[] at = camera.ground(px, py, 0);
            if (at == null || at[1] < -25) {
                continue;
            }
            double in = shore.onBank(at[0], at[1]);
            double trodden = Math.exp(-(at[0] * at[0] * 0.45 + at[1] * at[1] * 1.5));
            if (in < 0.02 || random.nextDouble() < 1.5 * trodden) {
                continue;
            }
            double edge = Math.exp(-in / 0.30);
            double tall = (0.04 + 0.06 * random.nextDouble()) * (1 + 4.5 * edge * random.nextDouble());
            blade(at, px, py, tall, edge);
        }
    }

    private double horizonRow() {
        return Math.max(0, Math.min(paint.height - 1, camera.horizon(paint.width / 2.0) + paint.margin));
    }

    private void blade(double[] at, double px, double py, double tall, double edge) {
        Point top = camera.scene(at[0], tall, at[1]);
        double length = py - top.y();
        if (length < 0.6 || length > scale * 0.2) {
            return;
        }
        double lean = (random.nextDouble() - 0.5) * 0.9;
        int kind = Paint.mix(Paint.mix(GRASS, DRY, random.nextDouble() * 0.8), LUSH, edge * 0.6);
        double lit = 0.35 + 0.75 * random.nextDouble();
        for (double s = 0; s < length; s += 0.7) {
            double f = s / length;
            double x = px + paint.margin + lean * length * f * f;
            int colour = light.on(kind, lit * (0.45 + 0.65 * f));
            paint.blend((int) x, (int) (py + paint.margin - s), colour, 0.75 * (1 - 0.6 * f));
        }
    }
}
