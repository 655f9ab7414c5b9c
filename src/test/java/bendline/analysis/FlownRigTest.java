package bendline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import bendline.scene.Setup.Side;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class FlownRigTest {

    private static final double RATE = 100;
    private static final double RELEASE = 1;
    private static final Point TIP = new Point(400, 300);
    private static final double[] NONE = {};
    private static final Kinematics NOTHING = new Kinematics(0, NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE);
    private static final Point RIG = new Point(400, 420);

    private static Trace clip(double seconds, DoublePredicate rigSeen) {
        List<FrameTrace> frames = IntStream.range(0, (int) (seconds * RATE))
                .mapToObj(t -> frame(t, rigSeen.test(t / RATE)))
                .toList();
        List<Homography> still = frames.stream().map(f -> Homography.IDENTITY).toList();
        return new Trace(1920, 1080, frames, new CameraMotion(still, 0, true), 300, 1, null);
    }

    private static FrameTrace frame(int t, boolean rigSeen) {
        Tracked seen = Tracked.seen(TIP, 1);
        return new FrameTrace(
                t, t / RATE, seen, seen, rigSeen ? seen.at(RIG) : Tracked.notSeen(null, "nothing"), null, Double.NaN);
    }

    /** A cast whose release is known to a frame, or not known. */
    private static Stroke cast(int number, int firstFrame, double release) {
        Map<EventKind, Event> events = new EnumMap<>(EventKind.class);
        for (EventKind kind : EventKind.values()) {
            events.put(kind, Event.unknown(kind, "not looked for"));
        }
        if (!Double.isNaN(release)) {
            int frame = (int) Math.round(release * RATE);
            events.put(EventKind.RELEASE, new Event(EventKind.RELEASE, release, 1 / RATE, frame, "told"));
        }
        return new Stroke(number, Side.RIGHT, firstFrame, firstFrame + 100, NOTHING, events, List.of());
    }

    private static List<Double> seen(Trace trace) {
        return trace.frames().stream()
                .filter(f -> f.rig().seen())
                .map(FrameTrace::seconds)
                .toList();
    }

    private static boolean inFlight(double s) {
        return s <= RELEASE + 0.10;
    }

    @Test
    void flightIsKeptAndWhatComesAfterItIsNot() {
        Trace trace = clip(6, s -> inFlight(s) || s > 1.3 && s < 1.5 || s > 5);
        Trace told = FlownRig.removed(trace, List.of(cast(1, 0, RELEASE)), List.of(), 1);
        assertThat(seen(told)).isEqualTo(seen(clip(6, s -> inFlight(s) || s > 5)));
        assertThat(told.frames().get(140).rig().reason()).contains("left with the cast");
        assertThat(told.frames().get(140).tip())
                .isEqualTo(trace.frames().get(140).tip());
    }

    @Test
    void aFlightMayMissAFewFrames() {
        Trace trace =
                clip(3, s -> s < RELEASE - 0.05 || s > RELEASE + 0.02 && s < 1.2 && Math.round(s * RATE) % 4 == 0);
        assertThat(seen(FlownRig.removed(trace, List.of(cast(1, 0, RELEASE)), List.of(), 1)))
                .isEqualTo(seen(trace));
    }

    @Test
    void aReleaseThatIsNotKnownTakesNothingOut() {
        Trace trace = clip(3, s -> true);
        assertThat(seen(FlownRig.removed(trace, List.of(cast(1, 0, Double.NaN)), List.of(), 1)))
                .isEqualTo(seen(trace));
    }

    @Test
    void theNextCastHasItsRig() {
        Trace trace = clip(5, s -> inFlight(s) || s > 2.5);
        List<Stroke> both = List.of(cast(1, 0, RELEASE), cast(2, 260, Double.NaN));
        assertThat(seen(FlownRig.removed(trace, both, List.of(), 1)))
                .isEqualTo(seen(clip(5, s -> inFlight(s) || s * RATE > 259.5)));
    }

    @Test
    void slowMotionTakesAsManyTimesLonger() {
        Trace trace = clip(6, s -> inFlight(s) || s > 1.25 && s < 1.5 || s > 4.5);
        List<Stroke> cast = List.of(cast(1, 0, RELEASE));
        assertThat(seen(FlownRig.removed(trace, cast, List.of(), 4)))
                .isEqualTo(seen(clip(6, s -> inFlight(s) || s > 1.25 && s < 1.5)));
    }

    @Test
    void aRigThatWasMarkedIsBelieved() {
        Trace trace = clip(4, s -> inFlight(s) || s > 1.3 && s < 1.5);
        List<Stroke> cast = List.of(cast(1, 0, RELEASE));
        Mark here = new Mark(1.4, Map.of(Part.RIG, RIG), Set.of());
        Mark hidden = new Mark(1.4, Map.of(), Set.of(Part.RIG));
        assertThat(seen(FlownRig.removed(trace, cast, List.of(here), 1))).isEqualTo(seen(trace));
        assertThat(seen(FlownRig.removed(trace, cast, List.of(hidden), 1))).allMatch(s -> inFlight(s));
    }
}
