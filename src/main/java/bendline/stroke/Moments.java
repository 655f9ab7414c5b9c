package bendline.stroke;

import bendline.signal.SmoothCurve;

/**
 * The moments of a stroke in real seconds, NaN where there is none, and the peaks they are measured against.
 *
 * @param backRate fastest turn on the way back, radians a second
 * @param rearmost a moment of the time in which the rod is as good as rearmost
 * @param rearmostAngle largest butt angle, radians
 * @param handStart the hand's part of forwardStart
 * @param turnStart the rotation's part of forwardStart
 * @param deepestLoad chord ratio smallest once the rod turns: not what is left of stopping the backswing
 */
record Moments(
        double backRate,
        double backswingStart,
        double backswingEnd,
        double rearmost,
        double rearmostAngle,
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
     * @param leeway what the curves leave open
     */
    record Search(double from, CastFinder.Candidate turn, double to, Leeway leeway) {}

    /**
     * Where in the stretches that the curves leave open the moments are taken.
     *
     * @param handLead real seconds by which the hand is taken to start before the rod turns; NaN if its own speed is known well
     *     enough to time it
     * @param arrival how far the end of the backswing is off, in half the time in which the rate falls through the neighbourhood
     *     of its level: slow errors of a trace, some hundredths of the peak rate, can move it as far
     * @param waiting how far from the middle of its wait the rod is taken to be rearmost, in half the wait
     */
    record Leeway(double handLead, double arrival, double waiting) {

        /** The likeliest. */
        static Leeway none(double handLead) {
            return new Leeway(handLead, 0, 0);
        }
    }

    /** Swings of the rate shorter than this share of the way back are slips of the trace, not strokes; real seconds. */
    private static final double SLIP_SHARE = 0.08;

    private static final double LEAST_SLIP_SECONDS = 0.06;
    private static final double MOST_SLIP_SECONDS = 0.2;

    /** Longest time by which the hand's fastest push comes before the rod turns, real seconds. */
    static final double LONGEST_HAND_LEAD_SECONDS = 0.3;

    /** Within this of its rearmost a rod waits: noise must not pick a moment of it. */
    private static final double LEVEL = Math.toRadians(1);

    private static final double LONGEST_CORNER_SECONDS = 0.2;

    /** Longest stroke back that is looked for, real seconds. */
    private static final double LONGEST_BACKSWING_SECONDS = 8;

    static Moments find(Curves c, Search s) {
        double fastest = c.forwardRate().argMax(s.turn().start(), s.turn().end());
        SmoothCurve angle = c.angle().runningMedian(LEAST_SLIP_SECONDS);
        double largest = angle.argMax(Math.max(s.from(), s.turn().start() - 3), fastest);
        double behind = angle.at(largest) - LEVEL;
        double reached = or(angle.lastRise(behind, s.from(), largest), largest);
        double left = or(angle.firstFall(behind, largest, fastest), largest);
        double lowest = angle.argMin(Math.max(s.from(), reached - LONGEST_BACKSWING_SECONDS), reached);
        SmoothCurve back = c.forwardRate().negated().runningMedian(slip(reached - lowest));
        double backPeak = back.argMax(lowest, reached);
        double backRate = back.at(backPeak);
        double backStart = start(back, s.from(), backPeak);
        double backEnd = back.firstFall(START_SHARE * backRate, backPeak, fastest);
        double peak = c.forwardRate().at(fastest);
        double turnStart = start(c.forwardRate(), backPeak, fastest);
        double handStart = Double.NaN;
        if (Double.isNaN(s.leeway().handLead())) {
            double handPeak = c.handRate()
                    .argMax(
                            s.turn().start() - LONGEST_HAND_LEAD_SECONDS,
                            s.turn().end());
            handStart = start(c.handRate(), backPeak, handPeak);
        } else {
            handStart = turnStart - s.leeway().handLead();
        }
        double from = Double.isNaN(turnStart) ? s.turn().start() : turnStart;
        double bend = c.chord().argMin(handStart < from ? handStart : from, s.to());
        return new Moments(
                backRate,
                backStart,
                backEnd + 0.5 * s.leeway().arrival() * arrivalSpan(back, backRate, backPeak, fastest),
                0.5 * (reached + left) + 0.5 * s.leeway().waiting() * (left - reached),
                angle.at(largest),
                handStart,
                turnStart,
                fastest,
                bend,
                c.chord().argMin(from, s.to()),
                c.forwardRate()
                        .firstFall(STOP_SHARE * peak, fastest, c.forwardRate().end()),
                c.chord().firstRise(STRAIGHT, bend, c.chord().end()));
    }

    /** Time in which the backward rate falls through the neighbourhood of the level that ends the backswing. */
    private static double arrivalSpan(SmoothCurve back, double rate, double from, double to) {
        double early = back.firstFall(1.5 * START_SHARE * rate, from, to);
        double late = back.firstFall(0.5 * START_SHARE * rate, from, to);
        return late > early ? late - early : 0;
    }

    private static double slip(double wayBack) {
        return wayBack > 0
                ? Math.max(LEAST_SLIP_SECONDS, Math.min(MOST_SLIP_SECONDS, SLIP_SHARE * wayBack))
                : LEAST_SLIP_SECONDS;
    }

    private static double or(double found, double other) {
        return Double.isNaN(found) ? other : found;
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
