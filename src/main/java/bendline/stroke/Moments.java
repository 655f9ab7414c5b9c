package bendline.stroke;

import bendline.signal.SmoothCurve;

/**
 * The moments of a stroke in real seconds, NaN where there is none, and the peaks they are measured against.
 *
 * @param lowest where the rod starts its way back: smallest angle before the rearmost
 * @param handStart the hand's part of forwardStart
 * @param turnStart the rotation's part of forwardStart
 * @param deepestLoad chord ratio smallest once the rod turns: not what is left of stopping the backswing
 */
record Moments(
        double lowest,
        double backPeak,
        double backRate,
        double backswingStart,
        double backswingEnd,
        double rearmost,
        double handStart,
        double turnStart,
        double fastestTurn,
        double peakBend,
        double deepestLoad,
        double stop,
        double rodStraight) {

    private static final double START_SHARE = 0.1;
    private static final double STOP_SHARE = 0.2;

    /** Chord ratio at which a rod counts as straight. */
    static final double STRAIGHT = 0.995;

    /**
     * Where to look.
     *
     * @param from earliest time that can belong to the cast
     * @param turn the forward turn
     * @param to latest time at which the blank can still be loaded
     * @param useHand whether the hand's speed is known well enough to start the forward stroke
     */
    record Search(double from, CastFinder.Candidate turn, double to, boolean useHand) {}

    /** Swings of the rate shorter than this share of the way back are slips of the trace, not strokes; real seconds. */
    private static final double SLIP_SHARE = 0.08;

    private static final double LEAST_SLIP_SECONDS = 0.06;
    private static final double MOST_SLIP_SECONDS = 0.2;

    private static final double LEVEL = Math.toRadians(0.3);

    private static final double LONGEST_CORNER_SECONDS = 0.2;

    /** Longest stroke back that is looked for, real seconds. */
    private static final double LONGEST_BACKSWING_SECONDS = 8;

    static Moments find(Curves c, Search s) {
        double fastest = c.forwardRate().argMax(s.turn().start(), s.turn().end());
        double rearmost = rearmost(c.angle(), Math.max(s.from(), s.turn().start() - 3), fastest);
        double lowest = c.angle().argMin(Math.max(s.from(), rearmost - LONGEST_BACKSWING_SECONDS), rearmost);
        SmoothCurve back = c.forwardRate().negated().runningMedian(slip(rearmost - lowest));
        double backPeak = back.argMax(lowest, rearmost);
        double backRate = back.at(backPeak);
        double backStart = start(back, s.from(), backPeak);
        double backEnd = back.firstFall(START_SHARE * backRate, backPeak, fastest);
        double peak = c.forwardRate().at(fastest);
        double turnStart = start(c.forwardRate(), backPeak, fastest);
        double handStart = Double.NaN;
        if (s.useHand()) {
            double handPeak = c.handRate()
                    .argMax(backEnd > 0 ? backEnd : backPeak, s.turn().end());
            handStart = start(c.handRate(), backPeak, handPeak);
        }
        double from = Double.isNaN(turnStart) ? s.turn().start() : turnStart;
        double bend = c.chord().argMin(handStart < from ? handStart : from, s.to());
        return new Moments(
                lowest,
                backPeak,
                backRate,
                backStart,
                backEnd,
                rearmost,
                handStart,
                turnStart,
                fastest,
                bend,
                c.chord().argMin(from, s.to()),
                c.forwardRate()
                        .firstFall(STOP_SHARE * peak, fastest, c.forwardRate().end()),
                c.chord().firstRise(STRAIGHT, bend, c.chord().end()));
    }

    private static double slip(double wayBack) {
        return wayBack > 0
                ? Math.max(LEAST_SLIP_SECONDS, Math.min(MOST_SLIP_SECONDS, SLIP_SHARE * wayBack))
                : LEAST_SLIP_SECONDS;
    }

    /** When the rod first comes within {@link #LEVEL} of its rearmost: where it waits, noise must not pick the moment. */
    private static double rearmost(SmoothCurve angle, double from, double to) {
        double largest = angle.argMax(from, to);
        double reached = angle.lastRise(angle.at(largest) - LEVEL, from, largest);
        return Double.isNaN(reached) ? largest : reached;
    }

    /**
     * When a rate last rises through a tenth of its peak. Movements begin with a corner, which smoothing rounds and so makes to
     * seem early; so where the rise is brisk the moment is taken from the straight line through the rises to two and three
     * tenths.
     */
    static double start(SmoothCurve rate, double from, double peakTime) {
        double peak = rate.at(peakTime);
        double own = rate.lastRise(START_SHARE * peak, from, peakTime);
        double two = rate.firstRise(2 * START_SHARE * peak, own, peakTime);
        double three = rate.firstRise(3 * START_SHARE * peak, two, peakTime);
        double line = two - (three - two);
        return line > own && three - own < LONGEST_CORNER_SECONDS ? line : own;
    }

    /** The earlier of the hand's start and the turn's. */
    double forwardStart() {
        return Double.isNaN(handStart) || turnStart < handStart ? turnStart : handStart;
    }
}
