package bendline.scene;

/** A histogram of weighted 8-bit levels that is cheap to fill and to clear where the levels lie close together. */
final class WeightedLevels {

    /**
     * Histograms that are filled in turn: samples of one pixel are mostly alike, and a processor that adds to what it has just
     * written has to wait for it.
     */
    private static final int TURNS = 4;

    private final double[] weight = new double[256 * TURNS];
    private double sum;
    private int lowest = 255;
    private int highest;
    private int turn;

    /** @param level 0 to 255 */
    void add(int level, double w) {
        turn = (turn + 1) & (TURNS - 1);
        weight[level * TURNS + turn] += w;
        sum += w;
        lowest = Math.min(lowest, level);
        highest = Math.max(highest, level);
    }

    /**
     * Adds one pixel of every sample.
     *
     * @param samples grey values
     * @param w of each sample
     * @param all their sum, which is always the same and slow to add up
     */
    void addAll(byte[][] samples, int pixel, double[] w, double all) {
        double[] into = weight;
        int low = lowest;
        int high = highest;
        for (int k = 0; k < samples.length; k++) {
            int level = samples[k][pixel] & 0xff;
            into[level * TURNS + (k & (TURNS - 1))] += w[k];
            low = Math.min(low, level);
            high = Math.max(high, level);
        }
        lowest = low;
        highest = high;
        sum += all;
    }

    /** The level up to which the share of the weight lies, the mean of two where it lies just between them; 0 if empty. */
    float quantileAndClear(double share) {
        double wanted = share * sum;
        double below = 0;
        float found = Float.NaN;
        for (int level = lowest; level <= highest; level++) {
            below += at(level);
            if (Float.isNaN(found) && below > wanted * (1 - 1e-9)) {
                found = below > wanted * (1 + 1e-9) ? level : (level + next(level)) / 2f;
            }
            for (int i = level * TURNS; i < (level + 1) * TURNS; i++) {
                weight[i] = 0;
            }
        }
        sum = 0;
        lowest = 255;
        highest = 0;
        return Float.isNaN(found) ? 0 : found;
    }

    private double at(int level) {
        int i = level * TURNS;
        return weight[i] + weight[i + 1] + (weight[i + 2] + weight[i + 3]);
    }

    private int next(int level) {
        for (int above = level + 1; above <= highest; above++) {
            if (at(above) > 0) {
                return above;
            }
        }
        return level;
    }
}
