package bendline.trace;

import bendline.geometry.Angles;
import bendline.geometry.Polyline;
import bendline.signal.LeastSquares;
import bendline.signal.Scatter;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

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

    /** By what share the length commonly changes from left to right, and from level to upright, for a phone not quite square. */
    private static final double LEAN_SD = 0.08;

    private static final double SQUEEZE_SD = 0.04;
    /** Curves nearer in direction than this are one direction. */
    private static final double CROWD_RAD = Math.toRadians(5);

    /** Hands seen in frames near in time err alike; so many are taken to err each for itself. */
    private static final int APART = 8;

    private static final int ROUNDS = 12;
    private static final double FAR = 2.5;

    /**
     * @param freePx upper hand to tip, pixels, in the middle of the directions seen
     * @param freeSdPx its 68 % uncertainty
     * @param agreement share of the curves that speak of this length, all directions counting alike
     * @param lean share by which the rod looks longer pointing right, and shorter pointing left: there it is nearer
     * @param squeeze share by which it looks longer level, and shorter upright
     */
    record Estimate(double freePx, double freeSdPx, double agreement, double lean, double squeeze) {

        /** The same length in all directions. */
        Estimate(double freePx, double freeSdPx, double agreement) {
            this(freePx, freeSdPx, agreement, 0, 0);
        }

        /** How long the rod looks where it lies along a line, pixels. */
        double along(Polyline line) {
            double angle = line.last().minus(line.first()).angle();
            return freePx * Math.exp(lean * Math.cos(angle) + squeeze * Math.cos(2 * angle));
        }
    }

    /** @param curves at least one, pixels; each direction counts once, however often the rod was seen in it */
    static Estimate of(List<Polyline> curves) {
        double median = median(curves, weights(curves));
        return of(curves, median, INTO_HAND, Math.max(LEAST_SD * median, 0.5 * scatter(curves, median)));
    }

    /**
     * From curves that begin where a body's hand was seen on them.
     *
     * @param curves at least one, pixels
     * @param handSdPx what is uncertain in all of them alike, pixels
     */
    static Estimate held(List<Polyline> curves, double handSdPx) {
        double[] alike = new double[curves.size()];
        Arrays.fill(alike, 1);
        double median = median(curves, alike);
        double drift = scatter(curves, median) / Math.sqrt(Math.min(curves.size(), APART));
        return of(curves, median, 1, Math.hypot(handSdPx, drift));
    }

    /**
     * How long a part of the rod looks that was seen whole.
     *
     * @param parts at least one, pixels
     */
    static Estimate ofParts(List<Polyline> parts) {
        double[] alike = new double[parts.size()];
        Arrays.fill(alike, 1);
        double median = median(parts, alike);
        double scatter = scatter(parts, median);
        double[] turned = byDirection(parts, Math.max(LEAST_SD, scatter / median));
        return new Estimate(Math.exp(turned[0]), scatter, 1, turned[1], turned[2]);
    }

    private static double median(List<Polyline> curves, double[] weights) {
        Integer[] order = IntStream.range(0, weights.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> curves.get(i).length()))
                .toArray(Integer[]::new);
        double half = Arrays.stream(weights).sum() / 2;
        int k = 0;
        for (double sum = weights[order[0]]; sum <= half && k + 1 < order.length; sum += weights[order[k]]) {
            k++;
        }
        return curves.get(order[k]).length();
    }

    /** One over how many curves share a curve's direction. */
    private static double[] weights(List<Polyline> curves) {
        double[] angles = curves.stream().mapToDouble(RodLength::angle).toArray();
        return Arrays.stream(angles)
                .map(a -> 1.0
                        / Arrays.stream(angles)
                                .filter(b -> Math.abs(Angles.wrap(b - a)) < CROWD_RAD)
                                .count())
                .toArray();
    }

    private static double scatter(List<Polyline> curves, double median) {
        double[] away = curves.stream()
                .mapToDouble(c -> Math.abs(c.length() - median))
                .sorted()
                .toArray();
        return Scatter.SD_OVER_MEDIAN * away[away.length / 2];
    }

    private static Estimate of(List<Polyline> curves, double median, double intoHand, double sd) {
        List<Polyline> rods = curves.stream()
                .filter(c -> Math.abs(c.length() - median) < SAME * median)
                .toList();
        double[] turned = byDirection(rods, Math.max(LEAST_SD, scatter(curves, median) / median));
        // The median is that of the directions seen; the rest is how others differ from it.
        double[] shares = rods.stream()
                .mapToDouble(c -> turned[1] * Math.cos(angle(c)) + turned[2] * Math.cos(2 * angle(c)))
                .sorted()
                .toArray();
        double middle = median / Math.exp(shares[shares.length / 2]);
        return new Estimate(middle / intoHand, sd / intoHand, agreement(curves, median), turned[1], turned[2]);
    }

    /**
     * Share of the curves that are of one length, each direction counted once: a rod that is held still for most of a clip, seen in
     * part only as it has become background there, must not outvote the swing.
     */
    private static double agreement(List<Polyline> curves, double length) {
        double[] weights = weights(curves);
        double same = 0;
        for (int i = 0; i < weights.length; i++) {
            same += Math.abs(curves.get(i).length() - length) < SAME * length ? weights[i] : 0;
        }
        return same / Arrays.stream(weights).sum();
    }

    private static double angle(Polyline c) {
        return c.last().minus(c.first()).angle();
    }

    /** Logarithm of the length as a constant, a part that goes with the direction's cosine and one with that of twice it. */
    private static double[] byDirection(List<Polyline> rods, double sd) {
        int n = rods.size();
        double[] weight = new double[n];
        Arrays.fill(weight, 1);
        double[] found = new double[3];
        for (int round = 0; round < ROUNDS; round++) {
            double[][] rows = new double[n + 2][];
            double[] y = new double[n + 2];
            for (int i = 0; i < n; i++) {
                double w = Math.sqrt(weight[i]) / sd;
                double angle = angle(rods.get(i));
                rows[i] = new double[] {w, w * Math.cos(angle), w * Math.cos(2 * angle)};
                y[i] = w * Math.log(rods.get(i).length());
            }
            rows[n] = new double[] {0, 1 / LEAN_SD, 0};
            rows[n + 1] = new double[] {0, 0, 1 / SQUEEZE_SD};
            found = LeastSquares.solve(rows, y);
            for (int i = 0; i < n; i++) {
                double angle = angle(rods.get(i));
                double fitted = found[0] + found[1] * Math.cos(angle) + found[2] * Math.cos(2 * angle);
                double off = (Math.log(rods.get(i).length()) - fitted) / (FAR * sd);
                weight[i] = 1 / (1 + off * off);
            }
        }
        return found;
    }
}
