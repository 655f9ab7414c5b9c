package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * Tells where the outer blank is lost in a background of its own look although a long line is seen, as the handle behind the
 * hand makes up for what is missing outside; and where the line runs on from the tip and looks like more of the blank. The rod
 * has one length, so a tip that is cut short puts the hand as far back and one too far out as far forward, and a hand can't be a
 * foot away a few frames later. So how much is missing, or too much, in each frame is chosen over all frames at once: the
 * least that lets the hand move no faster than hands do. What is too much is cut off; where something is missing, so is as much
 * at the inner end, which then lies on hand and arm.
 */
final class HiddenTips {

    /** Steps in which the missing part is told, free lengths. */
    static final double STEP = 0.012;

    /** Most of the blank that can be missing, free lengths. */
    private static final double MOST = 0.45;

    /** Most that a line can run on from the tip, free lengths. */
    private static final double RUNS_ON = 0.45;

    /** Less than this is left to the smoothing of tips in time, free lengths. */
    static final double TOO_LITTLE = 0.025;

    /** A hand on a rod of 3 m moves at up to 4 m/s in a cast and mostly at less than 1: usual speed, free lengths a second. */
    private static final double HAND_SPEED = 0.7;

    /** What a hand's place is uncertain by from frame to frame, free lengths. */
    private static final double JITTER = 0.01;

    /** How far hands may stray from where the rod turns without a word, and how fast it gets unlikely beyond, free lengths. */
    private static final double STRAY = 0.35;

    private static final double STRAY_EDGE = 0.1;

    /**
     * What a hand told by a body is uncertain by along the rod in a frame, free lengths. On eight clips it lay within 0.02 of the true
     * one in the middle, but laid back behind the head up to 0.07 off for seconds.
     */
    private static final double KNOWN_HAND = 0.05;

    /** Most that such a hand speaks against a place, units of log-likelihood: now and then it is another hand, or an elbow. */
    private static final double MOST_OF_A_HAND = 3;

    /** How much less likely than at its likeliest an end is that is still taken for seen, and what it is uncertain by, steps. */
    private static final double AS_SEEN = 2;

    private static final double FAINT_SD = 1;

    /**
     * The blank is nearly straight where it is stiffest. The hand is looked for straight on from the piece between these two
     * distances from it, free lengths; nearer to it what was fitted may be hand and arm.
     */
    private static final double STIFF_FROM = 0.12;

    private static final double STIFF_TO = 0.35;

    private static final double MOST_COST = 50;

    /** What a tip is uncertain by along the blank where what is much fainter begins, pixels. */
    private static final double BREAK_SD_PX = 3;

    private HiddenTips() {}

    /**
     * The same looks with the missing length told, and with what lies beyond the tip cut off.
     *
     * @param pivot about where the hands are, pixels
     * @param rod how long it looks
     */
    static List<Look> told(List<Look> looks, Point pivot, RodLength.Estimate rod) {
        return told(looks, pivot, rod, Map.of());
    }

    /**
     * The same where something else than the rod tells where the hand is.
     *
     * @param hands by frame, pixels
     */
    static List<Look> told(List<Look> looks, Point pivot, RodLength.Estimate rod, Map<Integer, Point> hands) {
        int[] seen = IntStream.range(0, looks.size())
                .filter(t -> looks.get(t).chosen() != null)
                .toArray();
        List<Look> out = new ArrayList<>(looks);
        double[] missing = missing(looks, seen, pivot, rod, hands);
        for (int k = 0; k < seen.length; k++) {
            Fit fit = looks.get(seen[k]).chosen();
            if (fit != null) {
                out.set(seen[k], looks.get(seen[k]).with(with(fit, missing[k], rod)));
            }
        }
        return out;
    }

    private static Fit with(Fit fit, double missingPx, RodLength.Estimate rod) {
        double freePx = rod.freePx();
        double lack = fit.faint().paint().lackPx();
        if (lack != 0 && Math.abs(missingPx - lack) < Math.min(Math.abs(missingPx), STEP * freePx)) {
            return Paint.mended(fit);
        }
        if (missingPx >= TOO_LITTLE * freePx) {
            GoesOn on = fit.faint().on();
            if (EndPrice.goesOn(on, freePx) && on.most() - on.upTo(missingPx) < AS_SEEN) {
                Polyline whole = FaintEnd.longer(fit.line(), on.pxNear(missingPx, STEP * freePx));
                return fit.withTip(whole, Math.max(fit.alongSdPx(), FAINT_SD * STEP * freePx));
            }
            return fit.clearOfHand(BlankFitter.CLEAR_OF_HANDS * rod.along(fit.line()) - missingPx)
                    .withHidden(missingPx);
        }
        if (missingPx > -TOO_LITTLE * freePx) {
            return fit.withHidden(0);
        }
        double faintPx = fit.faint().withinPx();
        boolean seen = Math.abs(faintPx + missingPx) < STEP * freePx;
        double sd = Math.max(fit.alongSdPx(), seen ? BREAK_SD_PX : 2 * STEP * freePx);
        return fit.withTip(fit.line().cut(fit.line().length() + (seen ? -faintPx : missingPx)), sd);
    }

    /** The missing length of each frame that shows a line, pixels. */
    private static double[] missing(
            List<Look> looks, int[] seen, Point pivot, RodLength.Estimate rod, Map<Integer, Point> hands) {
        double freePx = rod.freePx();
        int lowest = -(int) Math.round(RUNS_ON / STEP);
        int states = (int) Math.round((MOST + RUNS_ON) / STEP) + 1;
        int[][] from = new int[seen.length][states];
        double[] total = new double[states];
        Point[] before = new Point[0];
        for (int k = 0; k < seen.length; k++) {
            Look look = looks.get(seen[k]);
            Point[] hand = hands(Objects.requireNonNull(look.chosen()), lowest, states, rod);
            double[] now = new double[states];
            Point known = hands.get(seen[k]);
            Fit last = k == 0 ? null : looks.get(seen[k - 1]).chosen();
            EndPrice.Hand told = hands.isEmpty()
                    ? EndPrice.Hand.NOWHERE
                    : known == null ? EndPrice.Hand.ELSEWHERE : EndPrice.Hand.KNOWN;
            EndPrice price = EndPrice.of(Objects.requireNonNull(look.chosen()), last, freePx, told);
            for (int s = 0; s < states; s++) {
                now[s] = price.of(lowest + s)
                        + (known == null ? strays(hand[s], pivot, freePx) : off(hand, s, known, freePx));
            }
            if (k > 0) {
                double seconds = look.seconds() - looks.get(seen[k - 1]).seconds();
                double free = (HAND_SPEED * seconds + JITTER) * freePx;
                for (int s = 0; s < states; s++) {
                    now[s] += cheapest(total, before, hand[s], free, from[k], s);
                }
            }
            total = now;
            before = hand;
        }
        return back(total, from, lowest, freePx);
    }

    /** What it costs that a hand lies far from where the rod turns. */
    private static double strays(Point hand, Point pivot, double freePx) {
        double away = Math.max(0, hand.distance(pivot) / freePx - STRAY) / STRAY_EDGE;
        return Math.min(MOST_COST, 0.5 * away * away);
    }

    /** What it costs that a hand lies elsewhere than a body says. */
    private static double off(Point[] hand, int s, Point known, double freePx) {
        double away = along(hand, s, known) / (KNOWN_HAND * freePx);
        return Math.min(MOST_OF_A_HAND, 0.5 * away * away);
    }

    /** How far a hand lies from a known one along the way that hands go with the missing length, pixels. */
    private static double along(Point[] hand, int s, Point known) {
        Point way = hand[hand.length - 1].minus(hand[0]);
        return hand[s].minus(known).dot(way) / way.norm();
    }

    private static Point[] hands(Fit fit, int lowest, int states, RodLength.Estimate rod) {
        Point[] out = new Point[states];
        Polyline line = fit.line();
        double free = rod.along(line);
        for (int s = 0; s < states; s++) {
            double hand = line.length() - free + (lowest + s) * STEP * rod.freePx();
            // Beyond the inner end of what was fitted there is nothing to go by but its last two points.
            double from = Math.max(0, hand + STIFF_FROM * free);
            double to = from + (STIFF_TO - STIFF_FROM) * free;
            out[s] = line.at(to).towards(line.at(from), (to - hand) / (to - from));
        }
        return out;
    }

    private static double cheapest(double[] total, Point[] before, Point hand, double free, int[] from, int state) {
        double best = Double.POSITIVE_INFINITY;
        for (int r = 0; r < total.length; r++) {
            double moved = hand.distance(before[r]) / free;
            double cost = total[r] + Math.min(MOST_COST, 0.5 * moved * moved);
            if (cost < best) {
                best = cost;
                from[state] = r;
            }
        }
        return best;
    }

    private static double[] back(double[] total, int[][] from, int lowest, double freePx) {
        double[] out = new double[from.length];
        int state = 0;
        for (int s = 1; s < total.length; s++) {
            state = total[s] < total[state] ? s : state;
        }
        for (int k = from.length - 1; k >= 0; k--) {
            out[k] = (lowest + state) * STEP * freePx;
            state = from[k][state];
        }
        return out;
    }
}
