package bendline.scene;

/** A histogram of weighted 8-bit levels that is cheap to fill and to clear where the levels lie close together. */
final class WeightedLevels {

    private final double[] weight = new double[256];
    private double sum;
    private int lowest = 255;
    private int highest;

    /** @param level 0 to 255 */
    void add(int level, double w) {
        weight[level] += w;
        sum += w;
        lowest = Math.min(lowest, level);
        highest = Math.max(highest, level);
    }

    /** The level up to which the share of the weight lies, the mean of two where it lies just between them; 0 if empty. */
    float quantileAndClear(double share) {
        double wanted = share * sum;
        double below = 0;
        float found = Float.NaN;
        for (int level = lowest; level <= highest; level++) {
            below += weight[level];
            if (Float.isNaN(found) && below > wanted * (1 - 1e-9)) {
                found = below > wanted * (1 + 1e-9) ? level : (level + next(level)) / 2f;
            }
            weight[level] = 0;
        }
        sum = 0;
        lowest = 255;
        highest = 0;
        return Float.isNaN(found) ? 0 : found;
    }

    private int next(int level) {
        for (int above = level + 1; above <= highest; above++) {
            if (weight[above] > 0) {
                return above;
            }
        }
        return level;
    }
}
