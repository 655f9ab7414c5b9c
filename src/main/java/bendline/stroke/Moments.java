package bendline.stroke;

import bendline.signal.SmoothCurve;
import java.util.Map;
import java.util.Random;

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

    /** Longest time by which the hand's fastest push comes before the rod turns, real seconds. */
    static final double LONGEST_HAND_LEAD_SECONDS = 0.3;

    /** Within this of its rearmost a rod waits: noise must not pick a moment of it. */
    private static final double LEVEL = Math.toRadians(1);

    /** Longest push before the rod turns fastest, real seconds; a slower one is no cast. Common practice, no source. */
    private static final double LONGEST_PUSH_SECONDS = 1.2;

    static Moments find(Curves c, Search s) {
        ForwardTurn forward = ForwardTurn.of(c, s.turn());
        double fastest = forward.fastest();
        SmoothCurve angle = c.angle().runningMedian(Backswing.LEAST_SLIP_SECONDS);
        double largest = angle.argMax(Math.max(s.from(), s.turn().start() - 3), fastest);
        double behind = angle.at(largest) - LEVEL;
        double reached = Curves.or(angle.lastRise(behind, s.from(), largest), largest);
        double left = Curves.or(angle.firstFall(behind, largest, fastest), largest);
        double earliest = fastest - LONGEST_PUSH_SECONDS;
        Backswing back = Backswing.find(c, angle, s, reached);
        double pushFrom = back.known() ? Math.max(back.peak(), earliest) : earliest;
        double turnStart = Onset.of(c.forwardRate(), pushFrom, fastest);
        double handStart = handStart(c, s, pushFrom, turnStart);
        double from = Double.isNaN(turnStart) ? s.turn().start() : turnStart;
        double bend = c.chord().argMin(handStart < from ? handStart : from, s.to());
        Backswing believed = back.endsSoonBefore(handStart < from ? handStart : from);
        double arrival = believed.arrivalSpan(fastest);
        return new Moments(
                believed.rate(),
                believed.start(),
                believed.end() + 0.5 * s.leeway().arrival() * arrival,
                0.5 * (reached + left) + 0.5 * s.leeway().waiting() * (left - reached),
                angle.at(largest),
                handStart,
                turnStart,
                fastest,
                bend,
                c.chord().argMin(from, s.to()),
                forward.stop(c),
                c.chord().firstRise(STRAIGHT, bend, c.chord().end()));
    }

    private static double handStart(Curves c, Search s, double from, double turnStart) {
        if (!Double.isNaN(s.leeway().handLead())) {
            return turnStart - s.leeway().handLead();
        }
        double peak = c.handRate()
                .argMax(s.turn().start() - LONGEST_HAND_LEAD_SECONDS, s.turn().end());
        return Onset.of(c.handRate(), from, peak);
    }

    /** The earlier of the hand's start and the turn's. */
    double forwardStart() {
        return Double.isNaN(handStart) || turnStart < handStart ? turnStart : handStart;
    }

    /** The same with those that a person put on frames in their place. */
    Moments with(Map<EventKind, Double> given, Curves c) {
        Double behind = given.get(EventKind.REARMOST);
        Double push = given.get(EventKind.FORWARD_START);
        return new Moments(
                backRate,
                given.getOrDefault(EventKind.BACKSWING_START, backswingStart),
                given.getOrDefault(EventKind.BACKSWING_END, backswingEnd),
                behind == null ? rearmost : behind,
                behind == null ? rearmostAngle : c.angle().at(behind),
                push == null ? handStart : push,
                push == null ? turnStart : push,
                given.getOrDefault(EventKind.FASTEST_TURN, fastestTurn),
                given.getOrDefault(EventKind.PEAK_BEND, peakBend),
                deepestLoad,
                given.getOrDefault(EventKind.STOP, stop),
                given.getOrDefault(EventKind.ROD_STRAIGHT, rodStraight));
    }

    /** The same without the deepest bend, which may lie where it was not seen. */
    Moments withoutDeepest() {
        return new Moments(
                backRate,
                backswingStart,
                backswingEnd,
                rearmost,
                rearmostAngle,
                handStart,
                turnStart,
                fastestTurn,
                Double.NaN,
                Double.NaN,
                stop,
                rodStraight);
    }

    /** These drawn moments as far from the nominal ones as they may really lie. */
    Moments asFarOff(Moments nominal, Doubt doubt) {
        double pushed =
                doubt.moved(EventKind.FORWARD_START, nominal.forwardStart(), forwardStart(), true) - forwardStart();
        return new Moments(
                backRate,
                doubt.moved(EventKind.BACKSWING_START, nominal.backswingStart, backswingStart, true),
                doubt.moved(EventKind.BACKSWING_END, nominal.backswingEnd, backswingEnd, true),
                doubt.moved(EventKind.REARMOST, nominal.rearmost, rearmost, true),
                rearmostAngle,
                handStart + pushed,
                turnStart + pushed,
                doubt.moved(EventKind.FASTEST_TURN, nominal.fastestTurn, fastestTurn, true),
                doubt.moved(EventKind.PEAK_BEND, nominal.peakBend, peakBend, false),
                deepestLoad,
                doubt.moved(EventKind.STOP, nominal.stop, stop, true),
                doubt.moved(EventKind.ROD_STRAIGHT, nominal.rodStraight, rodStraight, false));
    }

    /** What drawn paths do not show of how far moments may lie off: the fitted uncertainties and stretches in which nothing was seen. */
    record Doubt(Calibration fitted, RodSeries rod, double step, Random random) {

        /** @param across whether the moment is told through gaps that are longer than smoothing bridges */
        private double moved(EventKind kind, double nominal, double drawn, boolean across) {
            double unseen = across ? rod.unseen(nominal, StrokeTrends.bridge(step)) : 0;
            return fitted.drawn(kind, nominal, drawn, step, random.nextGaussian(), unseen);
        }
    }
}
