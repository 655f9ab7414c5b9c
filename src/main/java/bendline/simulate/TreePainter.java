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
        for (double x = left; x < right; x += tall * (0.22 + 0.30 * random.nextDouble())) {
            double size = tall * (0.6 + 0.65 * random.nextDouble());
            tree(x, ground, z + random.nextDouble() * 2, size, haze, random.nextInt(LEAVES.length));
        }
        undergrowth(left, right, z, ground, tall, haze);
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

    private void undergrowth(double left, double right, double z, double ground, double tall, double haze) {
        for (double x = left; x < right; x += tall * 0.045) {
            double r = tall * (0.05 + 0.06 * random.nextDouble());
            clump(x, ground + r * 0.5, z + 1, r, 0.25 + 0.3 * random.nextDouble(), haze, LEAVES[random.nextInt(6)]);
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
        int clumps = 70;
        for (int i = 0; i < clumps; i++) {
            double a = 2 * Math.PI * random.nextDouble();
            double out = Math.sqrt(random.nextDouble());
            double dx = crown * out * Math.cos(a);
            double dy = tall * 0.40 * out * Math.sin(a);
            double r = crown * (0.14 + 0.20 * random.nextDouble()) * (1.15 - 0.4 * out);
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
                double face = lit - 0.34 * dy / r - 0.12 * dx / r + 0.55 * (fine - 0.5);
                int colour = Paint.mix(light.on(leaf, Math.max(0, Math.min(1.1, face))), light.haze(), haze);
                paint.blend(px, py, colour, Noise.step(1.0, 0.80, d));
            }
        }
    }

    /** A leafless tree near by: a trunk that forks again and again into twigs. */
    void bare(double x, double z, double tall) {
        branch(x, 0, z, Math.PI / 2 + 0.1, tall * 0.30, tall * 0.030, 7);
    }

    private void branch(double x, double y, double z, double angle, double length, double half, int left) {
        if (left == 0) {
            return;
        }
        double bend = 0.2 * (random.nextDouble() - 0.5);
        double ex = x + length * Math.cos(angle + bend);
        double ey = y + length * Math.sin(angle + bend);
        bar(x, y, ex, ey, z, half, 0.72 * half);
        int forks = left > 5 ? 2 : 2 + random.nextInt(2);
        for (int i = 0; i < forks; i++) {
            double turn =
                    (i - (forks - 1) / 2.0) * (0.5 + 0.4 * random.nextDouble()) + 0.25 * (random.nextDouble() - 0.5);
            branch(ex, ey, z, angle + turn, length * (0.66 + 0.18 * random.nextDouble()), 0.62 * half, left - 1);
        }
    }

    private void bar(double x0, double y0, double x1, double y1, double z, double half0, double half1) {
        bendline.geometry.Point a = camera.scene(x0, y0, z);
        bendline.geometry.Point b = camera.scene(x1, y1, z);
        double ppm = camera.scene(x0, y0 + 1, z).distance(a);
        double n = Math.max(1, a.distance(b));
        for (double s = 0; s <= n; s += 0.5) {
            double f = s / n;
            double px = a.x() + f * (b.x() - a.x()) + paint.margin;
            double py = a.y() + f * (b.y() - a.y()) + paint.margin;
            double r = Math.max(0.35, ppm * (half0 + f * (half1 - half0)));
            for (int dx = (int) -Math.ceil(r); dx <= Math.ceil(r); dx++) {
                double side = dx / Math.max(1, r);
                double share = Math.max(0, Math.min(1, r + 0.5 - Math.abs(dx)));
                int colour = light.on(TRUNK, 0.45 - 0.35 * side + 0.25 * (grain.at(px / 2, py / 5) - 0.5));
                paint.blend((int) px + dx, (int) py, colour, share * 0.8);
            }
        }
    }
}
