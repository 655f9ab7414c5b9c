package bendline.simulate;

import java.util.Random;

/** Trees made of many clumps of leaves, each lit from above and the sun's side. */
final class TreePainter {

    private static final int[] LEAVES = {0x55663a, 0x4b5f37, 0x63703c, 0x3f5434, 0x6d7443, 0x586a4a};
    private static final int TRUNK = 0x4a4034;

    private final Paint paint;
    private final PhoneCamera camera;
    private final Daylight light;
    private final Noise grain;
    private final Random random;

    TreePainter(Paint paint, PhoneCamera camera, Daylight light, long seed) {
        this.paint = paint;
        this.camera = camera;
        this.light = light;
        this.grain = new Noise(seed + 23);
        this.random = new Random(seed ^ 0x7ee5L);
    }

    /**
     * A row of trees parallel to the plane of the cast.
     *
     * @param z of the row, metres, negative behind the plane
     * @param ground height of their foot, metres
     * @param tall mean height, metres
     * @param haze share of haze over them
     */
    void row(double z, double ground, double tall, double haze) {
        double left = edge(-1, z);
        double right = edge(1, z);
        undergrowth(left, right, z - 1, ground, tall, haze);
        for (double x = left; x < right; x += tall * (0.22 + 0.30 * random.nextDouble())) {
            double size = tall * (0.6 + 0.65 * random.nextDouble());
            tree(x, ground, z + random.nextDouble() * 2, size, haze, random.nextInt(LEAVES.length));
        }
        for (double x = left; x < right; x += tall * 0.05) {
            double r = tall * (0.03 + 0.05 * random.nextDouble());
            clump(x, ground + 0.4 * r, z + 3, r, 0.3 + 0.3 * random.nextDouble(), haze, LEAVES[random.nextInt(6)]);
        }
    }

    private double edge(int side, double z) {
        double x = 0;
        while (Math.abs(x) < 400) {
            double px = camera.scene(x, 0, z).x() + paint.margin;
            if (side < 0 ? px < -60 : px > paint.width + 60) {
                break;
            }
            x += side * 2.0;
        }
        return x;
    }

    /** Bushes and shade between the trunks: dark and tall at the back, lighter and low in front. */
    private void undergrowth(double left, double right, double z, double ground, double tall, double haze) {
        for (int pass = 0; pass < 3; pass++) {
            double high = tall * (0.34 - 0.13 * pass);
            for (double x = left; x < right; x += tall * (0.06 - 0.012 * pass)) {
                double r = tall * (0.10 - 0.025 * pass) * (0.7 + 0.7 * random.nextDouble());
                double y = ground + high * random.nextDouble();
                double lit = 0.12 + 0.16 * pass + 0.25 * random.nextDouble();
                clump(x, y, z + 0.5 + pass, r, lit, haze, LEAVES[random.nextInt(6)]);
            }
        }
    }

    private void tree(double x, double y, double z, double tall, double haze, int kind) {
        double crown = tall * (0.26 + 0.10 * random.nextDouble());
        double middle = y + tall * 0.60;
        double px = camera.scene(x, y, z).x() + paint.margin;
        double ppm = camera.scene(x, y + 1, z).distance(camera.scene(x, y, z));
        trunk(
                px,
                camera.scene(x, y, z).y() + paint.margin,
                camera.scene(x, middle, z).y() + paint.margin,
                Math.max(1, 0.022 * tall * ppm),
                haze);
        int leaf = Paint.mix(LEAVES[kind], LEAVES[random.nextInt(LEAVES.length)], 0.5 * random.nextDouble());
        int clumps = 100;
        for (int i = 0; i < clumps; i++) {
            double a = 2 * Math.PI * random.nextDouble();
            double out = Math.sqrt(random.nextDouble());
            double dx = crown * out * Math.cos(a);
            double dy = tall * 0.40 * out * Math.sin(a);
            double r = crown * (0.11 + 0.19 * random.nextDouble()) * (1.15 - 0.4 * out);
            // Deep clumps first and dark, outer ones last and bright; the top and the sun's side brightest.
            double depth = (double) i / clumps;
            double lit =
                    0.10 + 0.42 * depth + 0.30 * dy / (0.4 * tall) - 0.12 * dx / crown + 0.16 * random.nextDouble();
            clump(x + dx, middle + dy, z, r, lit, haze, leaf);
        }
    }

    private void trunk(double px, double bottom, double top, double half, double haze) {
        int colour = Paint.mix(light.on(TRUNK, 0.3), light.haze(), haze);
        for (int y = (int) top; y <= bottom; y++) {
            for (int x = (int) Math.floor(px - half); x <= px + half; x++) {
                paint.blend(x, y, Paint.lit(colour, 0.8 + 0.3 * grain.hash(x, y)), 0.9);
            }
        }
    }

    /** A ragged disc with leaf-sized light and dark. */
    private void clump(double x, double y, double z, double radius, double lit, double haze, int leaf) {
        double cx = camera.scene(x, y, z).x() + paint.margin;
        double cy = camera.scene(x, y, z).y() + paint.margin;
        double r = Math.max(1.5, radius * camera.scene(x, y + 1, z).distance(camera.scene(x, y, z)));
        double leafSize = Math.max(1.6, 0.10 * r);
        int reach = (int) Math.ceil(1.25 * r);
        for (int dy = -reach; dy <= reach; dy++) {
            for (int dx = -reach; dx <= reach; dx++) {
                int px = (int) cx + dx;
                int py = (int) cy + dy;
                if (px < 0 || py < 0 || px >= paint.width || py >= paint.height) {
                    continue;
                }
                double ragged = grain.at(px / leafSize, py / leafSize);
                double d = Math.hypot(dx, dy) / r + 0.75 * (ragged - 0.5);
                if (d > 1) {
                    continue;
                }
                double fine = grain.at(px / (0.55 * leafSize) + 50, py / (0.55 * leafSize));
                double face = lit - 0.36 * dy / r - 0.12 * dx / r + 0.75 * (fine - 0.5) + 0.3 * (ragged - 0.5);
                int colour = Paint.mix(light.on(leaf, Math.max(0, Math.min(1.1, face))), light.haze(), haze);
                paint.blend(px, py, colour, Noise.step(1.0, 0.80, d));
            }
        }
    }
}
