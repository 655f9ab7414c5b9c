package bendline.trace;

import bendline.geometry.Polyline;
import bendline.geometry.PolynomialCurve;
import bendline.image.Plane;
import java.util.Arrays;

/**
 * Something fainter at the outer end of a curve, or beyond it. Beside a dark blank a tip painted in a light colour hardly counts,
 * against a bright sky all the less; and so does line that leads on from the tip. Which of them it is one frame can't tell, see
 * {@link Paint}.
 *
 * @param withinPx length of the curve's outer part that is much fainter than what lies before it, pixels; 0 where none is
 * @param beyondPx how far something fainter goes on from the curve's end, pixels; 0 where nothing does
 */
record FaintEnd(double withinPx, double beyondPx) {

    static final FaintEnd NONE = new FaintEnd(0, 0);

    /** Outer share of a blank that tells how it goes on: more of it bends in more ways than a parabola. */
    private static final double OUTER_SHARE = 0.4;

    private static final int POINTS = 30;

    /** How far to look beyond the end, pixels. */
    private static final double FARTHEST_PX = 150;

    /** How far from the way on, pixels. */
    private static final double BESIDE_PX = 3;

    /** Strength from which a station speaks for more, noise units. */
    private static final double LEVEL = 3;

    /** A station counts no more than so many levels, and so many missing stations are the end. */
    private static final double MOST = 2.5;

    private static final double GAP = 8;

    /** Inside the end it is the blank itself that is seen, pixels. */
    private static final double END_PX = 3;

    /** Longest fainter part that is looked for within a curve, shares of its length. */
    private static final double LONGEST_SHARE = 0.3;

    /** Shortest, and how much of what lies before it is asked, pixels. */
    private static final double SHORTEST_PX = 8;

    private static final double BEFORE_PX = 30;

    /** Nearly all of what lies before must be clear, noise units, and so many times as strong as nearly all of the fainter part. */
    private static final double CLEAR = 8;

    private static final double TIMES = 2.5;

    private static final double LOWER = 0.25;

    private static final double UPPER = 0.85;

    /**
     * @param strength of the curve's stations from the inner end to the outer one, {@link Strip#STEP_PX} apart
     * @param line the curve, pixels
     * @param blurPx width of its picture at the outer end
     */
    static FaintEnd of(double[] strength, Plane difference, Polyline line, double blurPx) {
        return new FaintEnd(within(strength) * Strip.STEP_PX, beyond(difference, line, blurPx));
    }

    /** Stations of the fainter part: the break that stands out most of those between something clear and something much fainter. */
    static int within(double[] q) {
        int before = (int) (BEFORE_PX / Strip.STEP_PX);
        int longest = Math.min((int) (LONGEST_SHARE * q.length), q.length - before - 1);
        int best = 0;
        double most = 0;
        for (int k = (int) (SHORTEST_PX / Strip.STEP_PX); k <= longest; k++) {
            int at = q.length - k;
            if (quantile(q, at - before, at, LOWER) >= Math.max(CLEAR, TIMES * quantile(q, at, q.length, UPPER))) {
                double step = logMean(q, at - before, at) - logMean(q, at, q.length);
                double standsOut = step * Math.sqrt((double) k * before / (k + before));
                if (standsOut > most) {
                    most = standsOut;
                    best = k;
                }
            }
        }
        return best;
    }

    private static double quantile(double[] q, int from, int to, double share) {
        double[] part = Arrays.copyOfRange(q, from, to);
        Arrays.sort(part);
        return part[(int) (share * (part.length - 1))];
    }

    private static double logMean(double[] q, int from, int to) {
        return Arrays.stream(q, from, to).map(x -> Math.log(Math.max(1, x))).sum() / (to - from);
    }

    /** How far something goes on from the end of a curve, pixels. */
    static double beyond(Plane difference, Polyline line, double blurPx) {
        Polyline outer = line.reversed().cut(OUTER_SHARE * line.length()).reversed();
        PolynomialCurve curve = PolynomialCurve.through(outer.resampled(POINTS), 2);
        double perStation = 2 * Strip.STEP_PX / outer.length();
        double first = 1 - END_PX / Strip.STEP_PX * perStation;
        double widest = 1.5 * blurPx + 2.5;
        int stations = (int) (FARTHEST_PX / Strip.STEP_PX);
        Strip strip = new Strip(difference, curve, first, perStation, stations, BESIDE_PX, i -> widest, 0);
        double sum = 0;
        double best = 0;
        int end = 0;
        for (int i = 0; i < stations && sum > best - GAP * LEVEL; i++) {
            double q = 0;
            for (float s : strip.strength[i]) {
                q = Math.max(q, s);
            }
            sum += Math.min(q, MOST * LEVEL) - LEVEL;
            if (sum >= best) {
                best = sum;
                end = i;
            }
        }
        return Math.max(0, end * Strip.STEP_PX - END_PX);
    }
}
