package bendline.stroke;

import bendline.signal.SmoothCurve;
import java.util.EnumMap;
import java.util.Map;

/** The numbers that follow from the smooth curves and the moments of one stroke; degrees and real seconds, NaN where none. */
final class Numbers {

    /** By how much a rod must have fallen to count as dropped. */
    private static final double DROPPED = Math.toRadians(5);

    /** What a rod that has arrived may still seem to move. */
    private static final double LEVEL = Math.toRadians(1);

    /** Way from a tenth of the peak rate to rest over that from a half to a tenth, for a stop with the least jerk. */
    private static final double STOP_DRAWN_ON = 0.607;

    private static final double LOOK_SECONDS = 1.0;

    /**
     * A butt that comes to rest so long after the release, real seconds, has gone on falling and not stopped: on the casts of two
     * simulators the stop comes 40 ms before to 15 ms after it.
     */
    private static final double LATEST_STOP_SECONDS = 0.06;

    private final Curves c;
    private final Moments m;
    private final double release;
    private final Map<Quantity, Double> out = new EnumMap<>(Quantity.class);

    private Numbers(Curves c, Moments m, double release) {
        this.c = c;
        this.m = m;
        this.release = release;
    }

    static Map<Quantity, Double> of(Curves c, Moments m, double release) {
        Numbers n = new Numbers(c, m, release);
        n.times();
        n.turns();
        n.bend();
        n.hold();
        return n.out;
    }

    private void times() {
        double start = m.forwardStart();
        double back = m.backswingEnd() - m.backswingStart();
        out.put(Quantity.BACKSWING_SECONDS, back);
        out.put(Quantity.SETTLE_SECONDS, start - m.backswingEnd());
        out.put(Quantity.FORWARD_SECONDS, release - start);
        out.put(Quantity.TEMPO, back / (release - start));
        out.put(Quantity.PEAK_BEND_LAG, release - m.peakBend());
        out.put(Quantity.STOP_TO_RELEASE, release - m.stop());
    }

    private void turns() {
        out.put(Quantity.REARMOST_DEG, degrees(m.rearmostAngle()));
        out.put(
                Quantity.SWEEP_DEG,
                degrees(c.angle().at(m.forwardStart()) - c.angle().at(release)));
        out.put(Quantity.PEAK_BACK_RATE, degrees(m.backRate()));
        out.put(Quantity.PEAK_FORWARD_RATE, degrees(c.forwardRate().at(m.fastestTurn())));
        out.put(Quantity.RELEASE_ANGLE_DEG, degrees(c.angle().at(release)));
    }

    private void bend() {
        double deepest = compression(m.deepestLoad());
        double quarter = compression(atSweep(0.25));
        double half = compression(atSweep(0.5));
        out.put(Quantity.COMPRESSION, compression(m.peakBend()));
        out.put(Quantity.COMPRESSION_AT_QUARTER, quarter);
        out.put(Quantity.COMPRESSION_AT_HALF, half);
        out.put(Quantity.COMPRESSION_AT_THREE_QUARTERS, compression(atSweep(0.75)));
        out.put(Quantity.EARLY_LOAD, quarter / deepest);
        out.put(Quantity.HALF_LOAD, half / deepest);
        double loaded = c.chord().lastFall(1 - 0.25 * deepest, m.forwardStart(), m.deepestLoad());
        double from = c.angle().at(m.forwardStart());
        out.put(
                Quantity.LOAD_SWEEP_SHARE,
                (from - c.angle().at(loaded)) / (from - c.angle().at(release)));
        out.put(Quantity.TIP_LAG_DEG, degrees(c.lag().at(c.lag().argMax(m.forwardStart(), release))));
    }

    private double atSweep(double share) {
        return atSweep(c, m, release, share);
    }

    /** A smoothed chord ratio may overshoot 1 a little; a rod can't. */
    private double compression(double time) {
        return Math.max(0, 1 - c.chord().at(time));
    }

    /** When a share of the sweep has been turned through; NaN where that is not known. */
    static double atSweep(Curves c, Moments m, double release, double share) {
        double from = c.angle().at(m.forwardStart());
        double to = c.angle().at(release);
        return c.angle().firstFall(from - share * (from - to), m.forwardStart(), release);
    }

    private void hold() {
        double heldFrom = heldFrom(m, release);
        double held = c.angle().at(heldFrom);
        out.put(Quantity.HELD_ANGLE_DEG, degrees(held));
        out.put(Quantity.FALL_150, degrees(held - c.angle().at(release + 0.15)));
        out.put(Quantity.FALL_250, degrees(held - c.angle().at(release + 0.25)));
        out.put(Quantity.FALL_500, degrees(held - c.angle().at(release + 0.5)));
        double slowest = c.forwardRate().argMin(Math.min(m.stop(), heldFrom), heldFrom + 0.15);
        double fastest = c.forwardRate().argMax(slowest, release + 0.5);
        out.put(Quantity.FALL_RATE, Math.max(0, degrees(c.forwardRate().at(fastest))));
        out.put(Quantity.DROP_STARTS, c.angle().firstFall(held - DROPPED, heldFrom, release + LOOK_SECONDS) - release);
    }

    /** From when on the rod is held or falls: the release, or the stop a little after it. */
    private static double heldFrom(Moments m, double release) {
        boolean stopped = m.stop() > release && m.stop() <= release + LATEST_STOP_SECONDS;
        return stopped ? m.stop() : release;
    }

    /**
     * When the rod is lowest in the second after the release, or for as long as it was followed. A rod that has arrived stays,
     * and noise must not pick the moment there: then it is the end of the fall, to which the rate is drawn on from a half and a
     * tenth of its peak as in the smoothest of stops.
     */
    static double lowest(Curves c, Moments m, double release) {
        SmoothCurve angle = c.angle();
        double smallest = angle.argMin(release, Math.min(angle.end(), release + LOOK_SECONDS));
        double from = heldFrom(m, release);
        double slowest = c.forwardRate().argMin(from, Math.min(from + 0.15, smallest));
        double fastest = c.forwardRate().argMax(slowest, smallest);
        double peak = c.forwardRate().at(fastest);
        double half = c.forwardRate().firstFall(0.5 * peak, fastest, smallest);
        double tenth = c.forwardRate().firstFall(0.1 * peak, half, smallest);
        double arrived = tenth + STOP_DRAWN_ON * (tenth - half);
        boolean stays = arrived < smallest && angle.at(arrived) - angle.at(smallest) < LEVEL;
        return stays ? arrived : smallest;
    }

    private static double degrees(double radians) {
        return Math.toDegrees(radians);
    }
}
