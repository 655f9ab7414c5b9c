package bendline.trace;

import java.util.Arrays;

/**
 * How likely the blank goes on beyond the end of a curve, fainter than before, against nothing being there. One frame may tell a painted
 * tip before a bright sky hardly from nothing; the frames round it add up.
 *
 * <p>Strengths of empty places, and of faint ones, are taken to fall off exponentially; what is usual of an empty place is seen beside
 * the way on.
 */
final class GoesOn {

    /** Nothing is known. */
    static final GoesOn UNKNOWN = new GoesOn(new double[0]);

    /** How many times as strong as an empty place something faint is on average; the second simulator's white tips before clouds are 4 to 15 times. */
    private static final double FAINT = 4;

    /** An empty place is at least so strong, noise units: less is a matter of chance. */
    private static final double EMPTY = 0.4;

    /** A station counts no more than one so many times as strong as an empty place, so that one thing in the way is not all. */
    private static final double MOST = 6;

    /** What a station counts: neighbours look at the same pixels. */
    private static final double SHARE = 0.25;

    /** Log-likelihood from which something goes on. */
    private static final double CLEAR = 2;

    /** By station beyond the end, log-likelihood that the blank goes on to there. */
    private final double[] upTo;

    private final int end;

    private GoesOn(double[] upTo) {
        this.upTo = upTo;
        int best = 0;
        for (int i = 0; i < upTo.length; i++) {
            best = upTo[i] > upTo[best] ? i : best;
        }
        end = best;
    }

    /**
     * @param on strength on the way on, noise units, by station from the curve's end, {@link Strip#STEP_PX} apart
     * @param beside that of places beside it
     */
    static GoesOn of(double[] on, double[] beside) {
        double empty = Math.max(EMPTY, Arrays.stream(beside).average().orElse(EMPTY));
        double[] upTo = new double[on.length + 1];
        for (int i = 0; i < on.length; i++) {
            double times = Math.min(MOST, on[i] / empty);
            upTo[i + 1] = upTo[i] + SHARE * ((1 - 1 / FAINT) * times - Math.log(FAINT));
        }
        return new GoesOn(upTo);
    }

    /** Log-likelihood that the blank goes on for so many pixels at least, against its ending at once. */
    double upTo(double px) {
        double at = Math.max(0, px / Strip.STEP_PX);
        int i = Math.min(upTo.length - 1, (int) at);
        int next = Math.min(upTo.length - 1, i + 1);
        return upTo.length == 0 ? 0 : upTo[i] + (Math.min(at, next) - i) * (upTo[next] - upTo[i]);
    }

    /** How far it most likely goes on, pixels; 0 if it doesn't. */
    double px() {
        return end * Strip.STEP_PX;
    }

    /** Log-likelihood that it goes on for so far, against its ending at once; not negative. */
    double most() {
        return upTo.length == 0 ? 0 : upTo[end];
    }

    /** Whether something goes on, for so far at least and so far at most, pixels. */
    boolean between(double leastPx, double mostPx) {
        return most() >= CLEAR && px() >= leastPx && px() <= mostPx;
    }

    /** The likeliest end within a distance from another, pixels. */
    double pxNear(double px, double withinPx) {
        int best = Math.min(upTo.length - 1, (int) Math.round(px / Strip.STEP_PX));
        int from = (int) Math.max(0, Math.ceil((px - withinPx) / Strip.STEP_PX));
        for (int i = from; i <= (px + withinPx) / Strip.STEP_PX && i < upTo.length; i++) {
            best = upTo[i] > upTo[best] ? i : best;
        }
        return Math.max(0, best) * Strip.STEP_PX;
    }
}
