package bendline.trace;

/** The best continuous way along a strip: where the strengths it passes add up to most, a step to the side costing some of that. */
final class RidgePath {

    /** Strength that a step aside costs, and most that one station counts, so that one bright thing does not draw it off, noise units. */
    private static final float ASIDE = 1.5f;

    private static final float MOST = 40;

    private RidgePath() {}

    /** By station, the offset at which it passes. */
    static int[] of(Strip strip) {
        int n = strip.strength.length;
        int m = strip.offsets();
        float[][] total = new float[n][m];
        byte[][] from = new byte[n][m];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < m; k++) {
                float best = i == 0 ? 0 : total[i - 1][k];
                for (int d = -1; d <= 1; d += 2) {
                    int q = k + d;
                    if (i > 0 && q >= 0 && q < m && total[i - 1][q] - ASIDE > best) {
                        best = total[i - 1][q] - ASIDE;
                        from[i][k] = (byte) d;
                    }
                }
                total[i][k] = best + Math.min(MOST, strip.strength[i][k]);
            }
        }
        int[] path = new int[n];
        for (int k = 1; k < m; k++) {
            path[n - 1] = total[n - 1][k] > total[n - 1][path[n - 1]] ? k : path[n - 1];
        }
        for (int i = n - 1; i > 0; i--) {
            path[i - 1] = path[i] + from[i][path[i]];
        }
        return path;
    }
}
