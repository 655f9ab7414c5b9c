package bendline.trace;

/**
 * What a curve shows of the paint on the rod's tip.
 *
 * @param turnedPx how far from the curve's end it turns from darker than its surroundings to brighter, or the other way round, pixels; NaN
 *     where it doesn't
 * @param told whether the paint's length tells that the curve ends at the tip
 * @param lackPx what the curve may lack of the paint beyond its end, pixels; negative where it may run on beyond the paint; 0 where none is
 *     known
 */
record PaintClue(double turnedPx, boolean told, double lackPx) {

    static final PaintClue NONE = turned(Double.NaN);

    static final PaintClue TOLD = new PaintClue(Double.NaN, true, 0);

    /** A turn so far from the end, pixels; NaN for none. */
    static PaintClue turned(double px) {
        return new PaintClue(px, false, 0);
    }

    /** Whether the curve shows where paint, or line, begins. */
    boolean turns() {
        return !Double.isNaN(turnedPx);
    }

    /** The same of a curve that may lack so much, pixels. */
    PaintClue lacking(double px) {
        return new PaintClue(turnedPx, told, px);
    }
}
