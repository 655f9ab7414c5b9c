package bendline.trace;

import bendline.geometry.Angles;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import org.jspecify.annotations.Nullable;

/**
 * What it costs, in units of log-likelihood, that the rod ends elsewhere than the curve that was found of it in one frame: farther out
 * where some is missing, farther in where line was taken for more of it. By what that frame shows alone.
 *
 * @param paint what shows of the tip's
 * @param runsOn whether the curve bends at its end as a line does where it leaves the tip
 * @param faint steps of its outer part that are so faint that they are rather line; 0 where none are
 * @param doubt what it costs that these are the rod's
 * @param on what goes on, fainter still, beyond the end; null where nothing does
 * @param line what it costs that this is not the rod's
 * @param freePx upper hand to tip, pixels
 */
record EndPrice(
        PaintClue paint,
        boolean runsOn,
        int faint,
        double doubt,
        @Nullable GoesOn on,
        double line,
        double freePx) {

    /** What the rarer and the likelier of a missing piece and one too much cost a frame, however long it is. */
    private static final double RARE = 2;

    private static final double USUAL = 0.7;

    /** What it costs a frame that the rod ends elsewhere although its paint says where: two in a hundred do, and e⁻⁴ is as much. */
    private static final double TOLD = 4;

    /**
     * What it costs a frame that the paint of a rod that has some does not show, and of one that shows where it begins, that it is of another
     * length there.
     */
    private static final double IF_LACKING = 0.35;

    /** What it costs a frame that a faint outer part is the rod's, and that what goes on beyond its end is not. */
    private static final double IF_FAINT = 0.35;

    private static final double IF_LINE = 1;

    /** Most of the blank that shows so faintly beyond a curve's end, free lengths. */
    private static final double LONGEST_FAINT = 0.25;

    /**
     * A line that leaves the tip at an angle looks like a blank that bends in its outer end alone: by more than an angle, and by
     * so many times more than over the same length farther in.
     */
    private static final double BENDS_ALONE = Math.toRadians(8);

    private static final double BENDS_MORE = 3;

    /** Outer length in which a line would show, free lengths. */
    private static final double OUTER = 0.2;

    /** How far apart tips are before backgrounds of their own, free lengths. */
    private static final double APART = 0.02;

    /** What is known of hands. */
    enum Hand {
        /** In this frame. */
        KNOWN,
        /** In others only. */
        ELSEWHERE,
        /** In none: nothing could contradict that a faint end is the rod's. */
        NOWHERE
    }

    /** @param before the curve of the frame before; of a rod that is held still every frame says the same once more */
    static EndPrice of(Fit fit, @Nullable Fit before, double freePx, Hand hand) {
        double anew = before == null
                ? 1
                : Math.min(1, fit.line().last().distance(before.line().last()) / (APART * freePx));
        double px = fit.faint().withinPx();
        boolean matters = hand != Hand.NOWHERE && px >= HiddenTips.TOO_LITTLE * freePx;
        GoesOn on = fit.faint().on();
        return new EndPrice(
                fit.faint().paint(),
                runsOn(fit.line(), freePx),
                matters ? (int) Math.round(px / HiddenTips.STEP / freePx) : 0,
                hand == Hand.KNOWN ? IF_FAINT * anew : 0,
                goesOn(on, freePx) ? on : null,
                IF_LINE * anew,
                freePx);
    }

    /** Whether something fainter goes on beyond a curve's end for as long as can be the rod's. */
    static boolean goesOn(GoesOn on, double freePx) {
        return on.between(HiddenTips.TOO_LITTLE * freePx, LONGEST_FAINT * freePx);
    }

    /** @param steps how much of the rod is missing beyond the curve's end; negative where the curve runs on beyond the rod's */
    double of(int steps) {
        double own = faint == 0 ? own(steps) : faint(steps);
        if (on == null) {
            return own;
        }
        // All of what goes on is the rod's, or none of it.
        double beyond = steps < 0 ? Double.POSITIVE_INFINITY : on.most() - on.upTo(steps * HiddenTips.STEP * freePx);
        return Math.min(own + line, beyond);
    }

    private double own(int steps) {
        double own = Math.min(0.5 * steps * steps, paint.told() ? TOLD : runsOn == steps < 0 ? USUAL : RARE);
        if (paint.lackPx() == 0) {
            return own;
        }
        double off = steps - paint.lackPx() / HiddenTips.STEP / freePx;
        double other = 0.5 * off * off;
        return paint.turns() ? Math.min(own + IF_LACKING, other) : Math.min(own, other + IF_LACKING);
    }

    /** The tip is where the faint part begins, or else where it ends: the rod's own end is as faint before a background like itself. */
    private double faint(int steps) {
        double away = steps + faint;
        return Math.min(0.5 * away * away, Math.min(RARE, doubt + 0.5 * steps * steps));
    }

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
}
