package bendline.trace;

import bendline.geometry.Angles;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

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
    private static final double STEP = 0.012;

    /** Most of the blank that can be missing, free lengths. */
    private static final double MOST = 0.45;

    /** Most that a line can run on from the tip, free lengths. */
    private static final double RUNS_ON = 0.35;

    /** Less than this is left to the smoothing of tips in time, free lengths. */
    private static final double TOO_LITTLE = 0.025;

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

    /**
     * What the rarer and the likelier of a missing piece and one too much cost a frame, however long it is; units of
     * log-likelihood.
     */
    private static final double RARE = 2;

    private static final double USUAL = 0.7;

    /** What it costs a frame that a faint end is the rod's. */
    private static final double IF_FAINT = 0.35;

    /** Most of the blank that shows so faintly beyond a curve's end, free lengths, and what it costs a frame that it is not the rod's. */
    private static final double LONGEST_FAINT = 0.25;

    private static final double IF_LINE = 1;

    /** How much less likely than at its likeliest an end is that is still taken for seen, and what it is uncertain by, steps. */
    private static final double AS_SEEN = 2;

    private static final double FAINT_SD = 1;

    /**
     * A line that leaves the tip at an angle looks like a blank that bends in its outer end alone: by more than an angle, and by
     * so many times more than over the same length farther in.
     */
    private static final double BENDS_ALONE = Math.toRadians(8);

    private static final double BENDS_MORE = 3;

    /** Outer length in which a line would show, free lengths. */
    private static final double OUTER = 0.2;

    /**
     * The blank is nearly straight where it is stiffest. The hand is looked for straight on from the piece between these two
     * distances from it, free lengths; nearer to it what was fitted may be hand and arm.
     */
    private static final double STIFF_FROM = 0.12;

    private static final double STIFF_TO = 0.35;

    private static final double MOST_COST = 50;

    /** How far apart tips are before backgrounds of their own, free lengths. */
    private static final double APART = 0.02;

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
        if (missingPx >= TOO_LITTLE * freePx) {
            GoesOn on = fit.faint().on();
            if (on.between(TOO_LITTLE * freePx, LONGEST_FAINT * freePx) && on.most() - on.upTo(missingPx) < AS_SEEN) {
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
            boolean runsOn = runsOn(Objects.requireNonNull(look.chosen()).line(), freePx);
            // Where no hand is known, nothing could contradict that a faint end is the rod's.
            int faint = hands.isEmpty() ? 0 : faint(look.chosen(), freePx);
            Fit last = k == 0 ? null : looks.get(seen[k - 1]).chosen();
            double doubt = known == null ? 0 : IF_FAINT * anew(look.chosen(), last, freePx);
            GoesOn on = look.chosen().faint().on();
            boolean more = on.between(TOO_LITTLE * freePx, LONGEST_FAINT * freePx);
            double line = IF_LINE * anew(look.chosen(), last, freePx);
            for (int s = 0; s < states; s++) {
                double own = faint == 0 ? own(lowest + s, runsOn) : own(lowest + s, faint, doubt);
                now[s] = (more ? goingOn(own + line, lowest + s, on, freePx) : own)
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

    private static double own(int steps, boolean runsOn) {
        double size = 0.5 * steps * steps;
        return Math.min(size, runsOn == steps < 0 ? USUAL : RARE);
    }

    /** Steps of a faint outer end that is long enough to matter. */
    private static int faint(Fit fit, double freePx) {
        double px = fit.faint().withinPx();
        return px < TOO_LITTLE * freePx ? 0 : (int) Math.round(px / STEP / freePx);
    }

    /**
     * The same where the outer end is so faint that it is rather line: the tip is where it begins, or else where it ends. The rod's
     * own end is as faint before a background like itself; of a rod that is held still there every frame says the same once more.
     *
     * @param doubt what it costs that it is the rod's; nothing while the hand is not seen
     */
    private static double own(int steps, int faint, double doubt) {
        double away = steps + faint;
        return Math.min(0.5 * away * away, Math.min(RARE, doubt + 0.5 * steps * steps));
    }

    /** The same where something still fainter goes on beyond the end: all of that is the rod's, or none of it. */
    private static double goingOn(double ends, int steps, GoesOn on, double freePx) {
        return steps < 0 ? ends : Math.min(ends, on.most() - on.upTo(steps * STEP * freePx));
    }

    /** What share of another look a frame is: how far the tip has moved on to another background. */
    private static double anew(Fit fit, @Nullable Fit before, double freePx) {
        return before == null
                ? 1
                : Math.min(1, fit.line().last().distance(before.line().last()) / (APART * freePx));
    }

    /** Whether a curve bends at its outer end as a line does where it leaves the tip, for a rod of so many pixels. */
    private static boolean runsOn(Polyline line, double freePx) {
        double length = line.length();
        double outer = turn(line, length - OUTER * freePx, length);
        double inner = turn(line, length - 2 * OUTER * freePx, length - OUTER * freePx);
        double alike = outer * inner > 0 ? Math.abs(inner) : 0;
        return Math.abs(outer) > BENDS_ALONE + BENDS_MORE * alike;
    }

    private static double turn(Polyline line, double from, double to) {
        return Angles.wrap(line.tangentAt(to).angle() - line.tangentAt(from).angle());
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
