package bendline.trace;

import java.util.Arrays;
import java.util.List;

/**
 * How long the rod looks, from curves that each end where the blank can no longer be seen. Outwards that is the tip.
 * Inwards it is the upper hand in most frames and the butt in some, so lengths heap up in one or two places.
 */
final class RodLength {

    /** Lengths within this share of each other count as the same: a camera not quite square changes them that much. */
    private static final double SAME = 0.03;
    /** A second heap counts if it has at least this share of the first one's members. */
    private static final double SECOND = 0.25;
    /** Whole rod over upper hand to tip, smallest and largest for a usual hold; common practice, no source. */
    private static final double LEAST_WHOLE = 1.09;

    private static final double MOST_WHOLE = 1.3;
    /** The visible blank ends a little inside the hand. */
    private static final double INTO_HAND = 1.03;

    private RodLength() {}

    /**
     * @param px length that most curves have, pixels
     * @param sdPx spread inside that heap
     * @param freePx upper hand to tip, pixels
     * @param freeSdPx its 68 % uncertainty
     */
    record Estimate(double px, double sdPx, double freePx, double freeSdPx) {}

    /** @param lengths pixels, at least one */
    static Estimate of(List<Double> lengths) {
        double[] sorted =
                lengths.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double[] main = heap(sorted, 0, Double.POSITIVE_INFINITY);
        double px = main[main.length / 2];
        double[] away = Arrays.stream(main).map(m -> Math.abs(m - px)).sorted().toArray();
        double sd = Math.max(1, 1.4826 * away[away.length / 2]);
        double[] shorter = heap(sorted, px / MOST_WHOLE, px / LEAST_WHOLE);
        double[] longer = heap(sorted, px * LEAST_WHOLE, px * MOST_WHOLE);
        boolean mainIsWhole = shorter.length >= SECOND * main.length && shorter.length > longer.length;
        boolean sure = mainIsWhole || longer.length >= SECOND * main.length;
        double free = (mainIsWhole ? shorter[shorter.length / 2] : px) / INTO_HAND;
        return new Estimate(px, sd, free, (sure ? 0.025 : 0.05) * free);
    }

    /** The members of the largest heap whose centre lies in a range; empty if there is none. */
    private static double[] heap(double[] sorted, double from, double to) {
        double[] best = {};
        for (double centre : sorted) {
            if (centre >= from && centre <= to) {
                double[] members = Arrays.stream(sorted)
                        .filter(l -> Math.abs(l - centre) <= SAME * centre)
                        .toArray();
                best = members.length > best.length ? members : best;
            }
        }
        return best;
    }
}
