package bendline.stroke;

import bendline.signal.SmoothCurve;

/**
 * The forward turn as one hump of the butt's rate: when it is fastest and when it stops, real seconds.
 *
 * @param fastest the middle of the time spent near the peak: where the rate is all but level noise must not pick a moment of it
 * @param rate at the peak, radians a second
 */
record ForwardTurn(double fastest, double rate) {

    static final double STOP_SHARE = 0.2;

    /** Shorter swings of the rate than this to either side are slips of the trace, as where casts are looked for; real seconds. */
    private static final double SLIP_SECONDS = 0.035;

    /** The same about the stop: a rod that is dropped at once rests no longer than this before it falls. */
    private static final double STOP_SLIP_SECONDS = 0.0175;

    /**
     * Share of the peak that counts as near it. Any from 0.8 to 0.9 halved the error of the highest point on the casts of one simulator; it asks
     * that the hump be as steep before as after so far down, and a lopsided one moves the moment by half of what it leans.
     */
    private static final double NEAR = 0.85;

    /** From where the fall of the rate is followed down, and in what steps; shares of the peak. */
    private static final double FALLEN = 0.5;

    private static final double RUNG = 0.05;

    /** A turn that takes longer to lose a twentieth of its peak rate has not stopped but goes over into another movement; real seconds. */
    private static final double LONGEST_RUNG_SECONDS = 0.08;

    /** Within the stretch that was found to be a cast's. */
    static ForwardTurn of(Curves c, CastFinder.Candidate turn) {
        SmoothCurve rate = c.forwardRate().runningMedian(SLIP_SECONDS);
        double top = rate.argMax(turn.start(), turn.end());
        double peak = rate.at(top);
        double from = Curves.or(rate.lastRise(NEAR * peak, turn.start(), top), turn.start());
        double to = Curves.or(rate.firstFall(NEAR * peak, top, rate.end()), turn.end());
        return new ForwardTurn(Double.isNaN(peak) ? Double.NaN : 0.5 * (from + to), peak);
    }

    /**
     * When the rate falls under a fifth of its peak. The rate of a rod that is dropped at once rises again a few hundredths of a second
     * after, and slow pictures or a gap fill that dip. So the fall is followed down step by step, and where it does not go on it
     * is drawn on straight: what comes after belongs to the drop.
     *
     * @return NaN where it was not followed so far
     */
    double stop(Curves c) {
        SmoothCurve r = c.forwardRate().runningMedian(STOP_SLIP_SECONDS);
        double before = r.firstFall((FALLEN + RUNG) * rate, fastest, r.end());
        double at = r.firstFall(FALLEN * rate, before, r.end());
        int rungs = (int) Math.round((FALLEN - STOP_SHARE) / RUNG);
        for (int left = rungs; left > 0; left--) {
            double next = r.firstFall((STOP_SHARE + (left - 1) * RUNG) * rate, at, r.end());
            if (!(next - at <= LONGEST_RUNG_SECONDS)) {
                return at + left * (at - before);
            }
            before = at;
            at = next;
        }
        return at;
    }
}
