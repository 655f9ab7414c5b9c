package bendline.trace;

/**
 * Where a ridge runs along a strip.
 *
 * @param offset beside the strip's middle by station, pixels
 * @param weight what that is worth, 1/px²; nothing where there is no ridge
 */
record Offsets(double[] offset, double[] weight) {

    /**
     * Along a path of offset indices, between two stations, both included.
     *
     * @param path by station
     */
    static Offsets of(Strip strip, int[] path, int from, int to) {
        double[] offset = new double[to + 1];
        double[] weight = new double[to + 1];
        for (int i = from; i <= to; i++) {
            offset[i] = strip.offset(peak(strip, i, path[i]));
            weight[i] = weight(strip, i, path[i]);
        }
        return new Offsets(offset, weight);
    }

    /** What a ridge's place at a station is worth, 1/px²; nothing where there is none. */
    private static double weight(Strip strip, int station, int k) {
        double strength = strip.strength[station][k];
        double sd = Math.max(2, strip.width(station, k)) / 2 * RodEnds.FLOOR / Math.max(1, strength) + 0.25;
        return strength > 0 ? 1 / (sd * sd) : 0;
    }

    /** Index of an offset near one at which the ridge is strongest, between whole ones. */
    private static double peak(Strip strip, int station, int k) {
        if (k == 0 || k == strip.offsets() - 1) {
            return k;
        }
        double a = strip.strength[station][k - 1];
        double b = strip.strength[station][k];
        double c = strip.strength[station][k + 1];
        double curvature = a - 2 * b + c;
        return curvature < -1e-9 ? k + Math.max(-0.7, Math.min(0.7, 0.5 * (a - c) / curvature)) : k;
    }
}
