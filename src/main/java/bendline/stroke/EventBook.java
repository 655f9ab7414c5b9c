package bendline.stroke;

import bendline.signal.SmoothCurve;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleToIntFunction;
import java.util.function.ToDoubleFunction;

/** Writes down a stroke's moments, in clip time, with their uncertainty and what they rest on. */
final class EventBook {

    /** Slower pictures than this many seconds apart leave quick moments open by much of a stroke, which is then said. */
    private static final double COARSE_SECONDS = 0.024;

    /** A rod that falls less is held. */
    private static final double HELD = Math.toRadians(2);

    /** Half of the middle 68 % of a stretch of which any moment is as likely. */
    private static final double EVEN = 0.34;

    private final StrokeReader.Readings all;
    private final double factor;
    private final DoubleToIntFunction frameAt;
    private final Map<EventKind, Event> out = new EnumMap<>(EventKind.class);

    /**
     * @param factor clip seconds in a real second
     * @param frameAt decoded frame shown at a real time
     */
    EventBook(StrokeReader.Readings all, double factor, DoubleToIntFunction frameAt) {
        this.all = all;
        this.factor = factor;
        this.frameAt = frameAt;
    }

    Map<EventKind, Event> events() {
        drawn(
                EventKind.BACKSWING_START,
                Moments::backswingStart,
                "the butt's backward rate rises through 10 % of its peak",
                "the rod was not followed from the start of its way back, or only so long before the push that it is another movement");
        drawn(
                EventKind.BACKSWING_END,
                Moments::backswingEnd,
                "the butt's backward rate falls under 10 % of its peak",
                "the end of the backswing was not followed, or lies so long before the push that it is another movement");
        drawn(
                EventKind.REARMOST,
                Moments::rearmost,
                "largest butt angle, the middle of the time spent within 1° of it",
                "the rearmost position was not followed");
        drawn(
                EventKind.FORWARD_START,
                Moments::forwardStart,
                forwardBasis(),
                "the start of the forward stroke was not followed");
        drawn(
                EventKind.FASTEST_TURN,
                Moments::fastestTurn,
                "the butt's forward rate peaks: the middle of the time spent within 15 % of it",
                "the fastest turn was not followed");
        drawn(
                EventKind.PEAK_BEND,
                Moments::peakBend,
                "smallest chord ratio",
                "grip and tip were not both seen while the blank was, or may have been, bent deepest");
        drawn(
                EventKind.STOP,
                Moments::stop,
                "the butt's forward rate falls under 20 % of its peak",
                "the rod was not followed until it stopped");
        found(EventKind.RELEASE, all.release());
        drawn(
                EventKind.ROD_STRAIGHT,
                Moments::rodStraight,
                "chord ratio back at 0.995",
                "the rod was not seen to be straight again");
        tipLowest();
        found(EventKind.CLIP_NOD, Calibration.FITTED.of(EventKind.CLIP_NOD, all.nod(), all.step()));
        return out;
    }

    private String forwardBasis() {
        Moments m = all.moments();
        if (all.handTimed()) {
            return (m.handStart() <= m.turnStart() ? "the upper hand's forward speed" : "the butt's forward rate")
                    + " rises through 10 % of its peak";
        }
        return String.format(
                Locale.ROOT,
                "the hand was not seen clearly enough to time it: taken to start %.2f s before the butt's forward rate rises"
                        + " through 10 %% of its peak, as hands usually do",
                StrokeReader.HAND_LEAD_SECONDS);
    }

    private void tipLowest() {
        Found release = all.release();
        if (!release.known()) {
            out.put(EventKind.TIP_LOWEST, Event.unknown(EventKind.TIP_LOWEST, "needs the moment of release"));
            return;
        }
        SmoothCurve angle = all.curves().angle();
        double value = Numbers.lowest(all.curves(), all.moments(), release.value());
        double fall = angle.at(release.value()) - angle.at(value);
        if (fall < HELD) {
            String why = "the rod is held: it falls by less than 2° within 1.0 s after the release";
            out.put(EventKind.TIP_LOWEST, Event.unknown(EventKind.TIP_LOWEST, why));
            return;
        }
        double clues = Math.hypot(Spread.of(all.draws().lowest()), EVEN * lowSeconds(angle, release.value(), value));
        double sd = Calibration.FITTED.total(EventKind.TIP_LOWEST, clues, all.step());
        boolean cut = angle.end() < release.value() + 1.0 - all.step();
        put(
                EventKind.TIP_LOWEST,
                value,
                sd,
                "smallest butt angle within 1.0 s after the release, or the end of the fall where the rod then stays"
                        + (cut ? "; the rod was followed for only part of that second" : ""),
                "the rod was not followed after the release");
    }

    /**
     * From when to when the rod is as low as it ever is, but for what counts as held: it swings on after its fall, and which of its
     * low points is the lowest is a matter of a degree. 0 where the moment is the end of the fall and not the lowest point.
     */
    private double lowSeconds(SmoothCurve angle, double release, double moment) {
        double end = Math.min(angle.end(), release + 1);
        if (Math.abs(angle.argMin(release, end) - moment) > all.step()) {
            return 0;
        }
        double level = angle.at(moment) + HELD;
        double from = angle.firstFall(level, release, end);
        double to = angle.at(end) <= level ? end : angle.lastRise(level, moment, end);
        return to - from;
    }

    private void drawn(EventKind kind, ToDoubleFunction<Moments> moment, String basis, String why) {
        double[] draws = all.draws().moments().stream().mapToDouble(moment).toArray();
        put(kind, moment.applyAsDouble(all.moments()), Spread.of(draws), basis, why);
    }

    private void found(EventKind kind, Found f) {
        put(kind, f.value(), f.sd(), f.basis(), f.basis());
    }

    private void put(EventKind kind, double seconds, double sd, String basis, String why) {
        if (Double.isNaN(seconds) || Double.isNaN(sd)) {
            out.put(kind, Event.unknown(kind, why));
            return;
        }
        out.put(kind, new Event(kind, seconds * factor, sd * factor, frameAt.applyAsInt(seconds), basis + coarse()));
    }

    /** What too few pictures a second leave open: a moment between two is as likely anywhere, half a step over the root of three. */
    private String coarse() {
        return all.step() < COARSE_SECONDS
                ? ""
                : String.format(
                        Locale.ROOT,
                        "; %.0f pictures a second can't place it closer than ± %.0f ms",
                        1 / all.step(),
                        1000 * all.step() / Math.sqrt(12));
    }
}
