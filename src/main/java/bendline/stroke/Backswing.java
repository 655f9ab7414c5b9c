package bendline.stroke;

import bendline.signal.SmoothCurve;

/**
 * The way back of the rod, real seconds; NaN where it was not followed.
 *
 * @param back backward rate
 * @param start when the rate rises through a tenth of its peak
 * @param peak when it is largest
 * @param end when it falls under a tenth of that
 * @param rate its peak, radians a second
 */
record Backswing(SmoothCurve back, double start, double peak, double end, double rate) {

    /** Swings of the rate shorter than this share of the way back are slips of the trace, not strokes; real seconds. */
    private static final double SLIP_SHARE = 0.08;

    static final double LEAST_SLIP_SECONDS = 0.06;
    private static final double MOST_SLIP_SECONDS = 0.2;

    /**
     * Longest stroke back, longest settle behind, and longest stretch out of sight within them, real seconds. Common practice, no
     * source: what lies further before a push, or beyond a longer gap, is another movement.
     */
    private static final double LONGEST_SECONDS = 5;

    static final double LONGEST_SETTLE_SECONDS = 3;
    private static final double LONGEST_GAP_SECONDS = 0.6;

    /** A rod that turns back more slowly is carried, radians a second, and by less is steadied, radians. */
    private static final double LEAST_RATE = Math.toRadians(12);

    private static final double LEAST_WAY = Math.toRadians(15);

    /**
     * Looks for it.
     *
     * @param angle butt angle without slips
     * @param reached when the rod has got to its rearmost
     */
    static Backswing find(Curves c, SmoothCurve angle, Moments.Search s, double reached) {
        double connected =
                angle.lastGapEnd(LONGEST_GAP_SECONDS, s.from(), s.turn().start());
        double lowest = angle.argMin(Math.max(connected, reached - LONGEST_SECONDS), reached);
        double way = reached > lowest ? angle.at(reached) - angle.at(lowest) : 0;
        SmoothCurve back = c.forwardRate().negated().runningMedian(slip(reached - lowest));
        double peak = back.argMax(lowest, reached);
        double rate = back.at(peak);
        if (!(rate >= LEAST_RATE) || !(way >= LEAST_WAY)) {
            return nothing(back);
        }
        double start = Onset.of(back, Math.max(connected, reached - LONGEST_SECONDS), peak);
        double end = back.firstFall(Onset.SHARE * rate, peak, s.turn().fastest());
        return new Backswing(back, start, peak, end, rate);
    }

    boolean known() {
        return !Double.isNaN(peak);
    }

    /** This, or nothing if it ends so long before the push that it belongs to something else. */
    Backswing endsSoonBefore(double push) {
        boolean longAgo = (Double.isNaN(end) ? peak : end) < push - LONGEST_SETTLE_SECONDS;
        return longAgo ? nothing(back) : this;
    }

    /** Time in which the backward rate falls through the neighbourhood of the level that ends it. */
    double arrivalSpan(double to) {
        double early = back.firstFall(1.5 * Onset.SHARE * rate, peak, to);
        double late = back.firstFall(0.5 * Onset.SHARE * rate, peak, to);
        return late > early ? late - early : 0;
    }

    private static Backswing nothing(SmoothCurve back) {
        return new Backswing(back, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    private static double slip(double wayBack) {
        return wayBack > 0
                ? Math.max(LEAST_SLIP_SECONDS, Math.min(MOST_SLIP_SECONDS, SLIP_SHARE * wayBack))
                : LEAST_SLIP_SECONDS;
    }
}
