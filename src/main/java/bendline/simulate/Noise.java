package bendline.simulate;

/** Smooth random fields that depend on a seed and a place only. */
final class Noise {

    private final int seed;

    Noise(long seed) {
        this.seed = (int) (seed ^ seed >>> 32) * 0x9E3779B1;
    }

    /** A number in [0, 1) for a lattice point. */
    double hash(int x, int y) {
        int h = seed + x * 0x27d4eb2d + y * 0x165667b1;
        h = (h ^ h >>> 15) * 0x85ebca6b;
        h = (h ^ h >>> 13) * 0xc2b2ae35;
        h ^= h >>> 16;
        return (h >>> 8) * 0x1p-24;
    }

    /** Smooth between lattice points, in [0, 1). */
    double at(double x, double y) {
        int ix = (int) Math.floor(x);
        int iy = (int) Math.floor(y);
        double fx = x - ix;
        double fy = y - iy;
        double u = fx * fx * (3 - 2 * fx);
        double v = fy * fy * (3 - 2 * fy);
        double top = hash(ix, iy) + u * (hash(ix + 1, iy) - hash(ix, iy));
        double bottom = hash(ix, iy + 1) + u * (hash(ix + 1, iy + 1) - hash(ix, iy + 1));
        return top + v * (bottom - top);
    }

    /** Octaves of half the size and half the weight added up, about 0.5 in the mean. */
    double cloud(double x, double y, int octaves) {
        double sum = 0;
        double weight = 0.5;
        double total = 0;
        for (int i = 0; i < octaves; i++) {
            sum += weight * at(x, y);
            total += weight;
            weight *= 0.5;
            x = 2.03 * x + 17.3;
            y = 2.03 * y - 9.7;
        }
        return sum / total;
    }

    /** 0 below the first edge, 1 above the second, smooth between. */
    static double step(double from, double to, double v) {
        double u = Math.max(0, Math.min(1, (v - from) / (to - from)));
        return u * u * (3 - 2 * u);
    }
}
