package bendline.trace;

import java.util.Arrays;
import java.util.List;

/**
 * How long the rod looks from upper hand to tip, from curves that each end where the blank can no longer be told from what
 * is behind it. Outwards that is mostly the tip, inwards mostly the upper hand; single curves are cut short by a background
 * of the rod's own colour or drawn out to the butt or along a leg, in both directions, so the middle one is taken.
 *
 * <p>Tried and dropped: taking the longest frequent length for the whole rod and a shorter one for the hand; on footage in
 * which the hand hides more or less of the handle it was wrong by up to 13 %, the median by up to 4 %.
 */
final class RodLength {

    /** The blank is seen to run a little into the hand. */
    static final double INTO_HAND = 1.03;
    /** What the median was off by on rendered footage, rounded up. */
    private static final double LEAST_SD = 0.03;
    /** Curves within this share of the median speak of the same rod. */
    static final double SAME = 0.2;

    private RodLength() {}

    /**
     * @param freePx upper hand to tip, pixels
     * @param freeSdPx its 68 % uncertainty
     * @param agreement share of the curves that speak of this length
     */
    record Estimate(double freePx, double freeSdPx, double agreement) {}

    /** @param lengths pixels, at least one */
    static Estimate of(List<Double> lengths) {
        double[] sorted =
                lengths.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double median = sorted[sorted.length / 2];
        double[] away =
                Arrays.stream(sorted).map(l -> Math.abs(l - median)).sorted().toArray();
        double same = Arrays.stream(away).filter(a -> a < SAME * median).count();
        double sd = Math.max(LEAST_SD * median, 0.5 * 1.4826 * away[away.length / 2]);
        return new Estimate(median / INTO_HAND, sd / INTO_HAND, same / sorted.length);
    }
}
