package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.footage.SlowMotion;
import bendline.scene.Mark;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Moments that a person put on frames: obeyed to the frame, and every measure is read from them. */
class GivenMomentsTest {

    private static final double FPS = 120;

    private static final AnalyticStroke STROKE = AnalyticStroke.GOOD;

    private static Mark on(double seconds, EventKind kind) {
        return new Mark(seconds, Map.of(), Set.of(), Set.of(kind.id()));
    }

    private static Stroke read(Trace trace, double factor, Mark... marks) {
        Setup setup = Setup.NONE.withMarks(List.of(marks));
        List<Stroke> strokes = new StrokeTimer().time(trace, setup, new SlowMotion(factor, "given"));
        assertThat(strokes).hasSize(1);
        return strokes.get(0);
    }

    private static double value(Stroke s, Quantity q) {
        Double v = s.measure(q.id()).value();
        assertThat(v).as(q.id() + ": " + s.measure(q.id()).basis()).isNotNull();
        return v;
    }

    @ParameterizedTest
    @CsvSource({"1, RIGHT", "4, LEFT"})
    void everyMomentIsObeyedToTheFrameInClipTimeAndCanBeToldWhereNothingWasFound(double factor, Side side) {
        Trace trace = STROKE.trace(FPS, factor, side, 0.3, 0.02, 1);
        Stroke found = read(trace, factor);
        Map<EventKind, Integer> frames = new EnumMap<>(EventKind.class);
        List<Mark> marks = new ArrayList<>();
        for (EventKind kind : EventKind.values()) {
            Integer frame = found.event(kind).frame();
            frames.put(kind, (frame == null ? 350 : frame) + 3);
            double seconds = trace.frames().get(frames.get(kind)).seconds();
            marks.add(on(Math.rint(seconds * 1e6) / 1e6, kind));
        }
        Stroke moved = read(trace, factor, marks.toArray(Mark[]::new));
        frames.forEach((kind, frame) -> {
            Event after = moved.event(kind);
            assertThat(after.frame()).as(kind.id()).isEqualTo(frame);
            assertThat(after.seconds())
                    .as(kind.id())
                    .isCloseTo(trace.frames().get(frame).seconds(), within(1e-9));
            assertThat(after.plusMinusSeconds()).as("half a frame").isCloseTo(0.5 * factor / FPS, within(1e-9));
            assertThat(after.basis()).contains("by hand");
        });
    }

    /** By how much each measure must follow is in its definition: durations by the time moved, angles by the formula's angle there. */
    @Test
    void measuresAreReadFromWhereTheMomentsWerePut() {
        Trace trace = STROKE.trace(FPS, 1, Side.RIGHT, 0.3, 0.02, 1);
        Stroke found = read(trace, 1);
        double release = STROKE.moments().get(EventKind.RELEASE);
        double start = STROKE.moments().get(EventKind.FORWARD_START);
        double late = frameTime(trace, release + 0.05);
        double early = frameTime(trace, start - 0.1);
        Stroke moved = read(trace, 1, on(late, EventKind.RELEASE), on(early, EventKind.FORWARD_START));
        assertThat(value(moved, Quantity.FORWARD_SECONDS)).isCloseTo(late - early, within(1e-6));
        assertThat(moved.measure(Quantity.FORWARD_SECONDS.id()).plusMinus())
                .as("two frames of half a step each, as far as 40 draws tell")
                .isBetween(0.4 * Math.sqrt(0.5) / FPS, 1.6 * Math.sqrt(0.5) / FPS);
        assertThat(value(moved, Quantity.TEMPO))
                .isCloseTo(value(found, Quantity.BACKSWING_SECONDS) / (late - early), within(1e-6));
        assertThat(value(moved, Quantity.RELEASE_ANGLE_DEG)).isCloseTo(STROKE.angle(late), within(1.0));
        assertThat(value(moved, Quantity.BACKSWING_SECONDS)).isEqualTo(value(found, Quantity.BACKSWING_SECONDS));
    }

    private static double frameTime(Trace trace, double seconds) {
        return trace.frames().get((int) Math.round(seconds * FPS)).seconds();
    }

    @Test
    void theLaterMarkCountsAndOneTakenBackLeavesNoTrace() {
        Trace trace = STROKE.trace(FPS, 1, Side.RIGHT, 0.3, 0.02, 1);
        Mark first = on(trace.frames().get(300).seconds(), EventKind.RELEASE);
        Mark second = on(trace.frames().get(310).seconds(), EventKind.RELEASE);
        assertThat(read(trace, 1, second, first).event(EventKind.RELEASE).frame())
                .isEqualTo(300);
        assertThat(read(trace, 1, first, second).event(EventKind.RELEASE).frame())
                .isEqualTo(310);
        Stroke plain = read(trace, 1);
        assertThat(plain.events()).isEqualTo(read(trace, 1).events());
        assertThat(plain.event(EventKind.RELEASE).basis()).doesNotContain("by hand");
    }

    @Test
    void eachOfSeveralCastsGetsItsOwn() {
        double[] fastest = {5, 12};
        double[] time = new double[200];
        for (int i = 0; i < time.length; i++) {
            time[i] = i / 10.0;
        }
        List<Mark> marks = List.of(
                on(2 * 4.2, EventKind.BACKSWING_START),
                on(2 * 12.1, EventKind.RELEASE),
                on(2 * 9.0, EventKind.CLIP_NOD),
                on(2 * 5.12, EventKind.RELEASE));
        List<GivenMoments> given = GivenMoments.of(marks, fastest, time, 2);
        assertThat(given.get(0).seconds())
                .isEqualTo(Map.of(EventKind.BACKSWING_START, 4.2, EventKind.CLIP_NOD, 9.0, EventKind.RELEASE, 5.1));
        assertThat(given.get(1).seconds()).isEqualTo(Map.of(EventKind.RELEASE, 12.1));
    }

    /** Nobody is kept from putting nonsense into a file of marks; it must not break anything. */
    @Test
    void nonsenseIsObeyedWithoutHarm() {
        Trace trace = STROKE.trace(30, 1, Side.RIGHT, 0.3, 0.02, 1);
        int last = trace.frames().size() - 1;
        for (EventKind kind : EventKind.values()) {
            // Those that come early go to the end, the others to the start.
            int frame = kind.compareTo(EventKind.FASTEST_TURN) < 0 ? last : 0;
            Stroke s = read(trace, 1, on(trace.frames().get(frame).seconds(), kind));
            assertThat(s.event(kind).frame()).as(kind.id()).isEqualTo(frame);
            assertThat(s.measures()).hasSameSizeAs(Quantity.values());
        }
    }

    @Test
    void onlyAnOrderThatCanBeIsTakenFromAPerson() {
        Map<EventKind, Double> told =
                Map.of(EventKind.FORWARD_START, 2.0, EventKind.RELEASE, 2.4, EventKind.STOP, 2.38);
        assertThat(EventKind.RELEASE.against(told, 1.9)).contains(EventKind.FORWARD_START);
        assertThat(EventKind.FORWARD_START.against(told, 2.4)).isPresent();
        assertThat(EventKind.RELEASE.against(told, 2.3)).as("before the stop").isEmpty();
        assertThat(EventKind.TIP_LOWEST.against(told, 2.3)).contains(EventKind.RELEASE);
    }
}
