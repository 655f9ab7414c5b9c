package bendline.trace;

import java.util.Arrays;
import java.util.List;

/**
 * The visible length of the rod in pixels, from the lengths of curves that each may have been cut short by a hidden tip or
 * drawn out along a leg: short ones differ from frame to frame, the true one keeps coming back.
 */
final class RodLength {

    /** Lengths within this share of each other count as the same: a camera not quite square changes them that much. */
    private static final double SAME = 0.025;
    /** The longest cluster wins if it has at least this share of the largest cluster's members. */
    private static final double ENOUGH = 0.5;

    private RodLength() {}

    /**
     * @param px centre of the cluster
     * @param sdPx spread inside it
     * @param members lengths in it
     */
    record Estimate(double px, double sdPx, int members) {}

    /** @param lengths pixels, at least one */
    static Estimate of(List<Double> lengths) {
        double[] sorted = lengths.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        int most = 0;
        for (double centre : sorted) {
            most = Math.max(most, near(sorted, centre).length);
        }
        int need = (int) Math.max(1, Math.ceil(ENOUGH * most));
        double best = sorted[0];
        int bestCount = 0;
        for (int i = sorted.length - 1; i >= 0; i--) {
            int count = near(sorted, sorted[i]).length;
            boolean sameCluster = bestCount > 0 && sorted[i] > best * (1 - 2 * SAME);
            if (count >= need && (bestCount == 0 || sameCluster && count > bestCount)) {
                best = sorted[i];
                bestCount = count;
            }
        }
        double[] members = near(sorted, best);
        double median = members[members.length / 2];
        double[] away = Arrays.stream(members).map(m -> Math.abs(m - median)).sorted().toArray();
        return new Estimate(median, Math.max(1, 1.4826 * away[away.length / 2]), members.length);
    }

    private static double[] near(double[] sorted, double centre) {
        return Arrays.stream(sorted)
                .filter(l -> Math.abs(l - centre) <= SAME * centre)
                .toArray();
    }
}
