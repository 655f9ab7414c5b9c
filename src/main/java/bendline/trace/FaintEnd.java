package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.geometry.PolynomialCurve;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Something fainter at the outer end of a curve, or beyond it. Beside a dark blank a tip painted in a light colour hardly counts,
 * against a bright sky all the less; and so does line that leads on from the tip. Which of them it is one frame can't tell, see
 * {@link Paint}.
 *
 * @param withinPx length of the curve's outer part that is much fainter than what lies before it, or light where that is dark or the other
 *     way round, pixels; 0 where none is
 * @param beyondPx how far something fainter goes on from the curve's end, pixels; 0 where nothing does
 * @param on how likely something still fainter does
 * @param paint what shows of the tip's
 */
record FaintEnd(double withinPx, double beyondPx, GoesOn on, PaintClue paint) {

    static final FaintEnd NONE = new FaintEnd(0, 0);

    /** An end that is known to be the tip. */
    static final FaintEnd TOLD = new FaintEnd(0, 0, GoesOn.UNKNOWN, PaintClue.TOLD);

    /** One that is as strong as the rest up to its end but turns over. */
    static FaintEnd turned(double px) {
        return new FaintEnd(0, 0, GoesOn.UNKNOWN, PaintClue.turned(px));
    }

    /** The same of a curve that may lack so much of the paint, pixels. */
    FaintEnd lacking(double px) {
        return new FaintEnd(withinPx, beyondPx, on, paint.lacking(px));
    }

    /** One of which no more is known. */
    FaintEnd(double withinPx, double beyondPx) {
        this(withinPx, beyondPx, GoesOn.UNKNOWN, PaintClue.NONE);
    }

    /** Outer share of a blank that tells how it goes on: more of it bends in more ways than a parabola. */
    private static final double OUTER_SHARE = 0.4;

    private static final int POINTS = 30;

    private static final double LONGER_STEP_PX = 5;

    /** How far to look beyond the end, pixels. */
    private static final double FARTHEST_PX = 150;

    /** How far from the way on, pixels, and where empty places are asked beside it. */
    private static final double BESIDE_PX = 3;

    private static final double EMPTY_PX = 12;

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
    static FaintEnd of(double[] strength, Plane difference, Polyline line, double blurPx, double turnedPx) {
        PolynomialCurve curve = wayOn(line);
        double widest = 1.5 * blurPx + 2.5;
        int stations = (int) (FARTHEST_PX / Strip.STEP_PX);
        double first = 1 - END_PX / Strip.STEP_PX * perStation(line);
        Strip strip = new Strip(difference, curve, first, perStation(line), stations, EMPTY_PX, i -> widest, 0);
        int near = (int) Math.ceil(BESIDE_PX / Strip.STEP_PX);
        int middle = strip.offsets() / 2;
        double[] here = strongest(strip, middle - near, middle + near);
        double[] left = strongest(strip, 0, 2 * near);
        double[] right = strongest(strip, strip.offsets() - 1 - 2 * near, strip.offsets() - 1);
        double[] beside =
                DoubleStream.concat(Arrays.stream(left), Arrays.stream(right)).toArray();
        int past = (int) (END_PX / Strip.STEP_PX);
        GoesOn on = GoesOn.of(Arrays.copyOfRange(here, past, here.length), beside);
        double within = Math.max(within(strength) * Strip.STEP_PX, Double.isNaN(turnedPx) ? 0 : turnedPx);
        return new FaintEnd(within, beyond(here), on, PaintClue.turned(turnedPx));
    }

    private static double[] strongest(Strip strip, int from, int to) {
        double[] out = new double[strip.strength.length];
        for (int i = 0; i < out.length; i++) {
            for (int k = from; k <= to; k++) {
                out[i] = Math.max(out[i], strip.strength[i][k]);
            }
        }
        return out;
    }

    /** How a curve goes on, from its outer part at parameters up to 1. */
    private static PolynomialCurve wayOn(Polyline line) {
        Polyline outer = line.reversed().cut(OUTER_SHARE * line.length()).reversed();
        return PolynomialCurve.through(outer.resampled(POINTS), 2);
    }

    private static double perStation(Polyline line) {
        return 2 * Strip.STEP_PX / (OUTER_SHARE * line.length());
    }

    /** A curve with so much more of it, pixels. */
    static Polyline longer(Polyline line, double px) {
        PolynomialCurve curve = wayOn(line);
        List<Point> points = new ArrayList<>(line.points());
        int more = (int) Math.ceil(px / LONGER_STEP_PX);
        for (int k = 1; k <= more; k++) {
            points.add(curve.at(1 + px * k / more / Strip.STEP_PX * perStation(line)));
        }
        return new Polyline(points).resampled(line.points().size());
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

    /** How far something goes on, by the strength of stations that begin just inside the end, pixels. */
    private static double beyond(double[] strength) {
        double sum = 0;
        double best = 0;
        int end = 0;
        for (int i = 0; i < strength.length && sum > best - GAP * LEVEL; i++) {
            sum += Math.min(strength[i], MOST * LEVEL) - LEVEL;
            if (sum >= best) {
                best = sum;
                end = i;
            }
        }
        return Math.max(0, end * Strip.STEP_PX - END_PX);
    }
}
