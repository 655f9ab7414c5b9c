package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StrokeTimerTest {

    private static final SlowMotion REAL_TIME = new SlowMotion(1, "as filmed");

    private static final Setup METRES = new Setup(null, 3.3, null, null, null, null, List.of());

    private static Stroke only(Trace trace, Setup setup, double factor) {
        List<Stroke> strokes = new StrokeTimer().time(trace, setup, new SlowMotion(factor, "given"));
        assertThat(strokes).hasSize(1);
        return strokes.get(0);
    }

    private static double value(Stroke s, String id) {
        Double v = s.measure(id).value();
        assertThat(v).as(id + ": " + s.measure(id).basis()).isNotNull();
        return v;
    }

    @ParameterizedTest
    @CsvSource({"30, 1, RIGHT", "60, 1, RIGHT", "60, 1, LEFT", "120, 1, LEFT", "120, 4, RIGHT", "240, 8, LEFT"})
    void momentsOfACleanStrokeAreTimedToPartsOfAFrame(double fps, double factor, Side side) {
        AnalyticStroke stroke = AnalyticStroke.GOOD;
        Stroke s = only(stroke.trace(fps, factor, side, 0.3, 0.02, 1), Setup.NONE, factor);
        assertThat(s.castsTo()).isEqualTo(side);
        List<Double> errors = new ArrayList<>();
        for (Map.Entry<EventKind, Double> truth : stroke.moments().entrySet()) {
            Event e = s.event(truth.getKey());
            assertThat(e.seconds()).as(e.basis()).isNotNull();
            double frames = (e.seconds() / factor - truth.getValue()) * fps;
            assertThat(Math.abs(frames)).as(truth.getKey().id() + ", frames").isLessThan(0.011 * fps + 1.5);
            assertThat(Math.abs(frames)).as(truth.getKey().id()).isLessThan(5 * e.plusMinusSeconds() / factor * fps);
            errors.add(Math.abs(frames));
        }
        errors.sort(null);
        assertThat(errors.get(errors.size() / 2)).as("median error, frames").isLessThan(Math.max(0.5, 0.006 * fps));
    }

    @Test
    void aMomentWhoseOwnFrameLostTheRodIsShownByANeighbour() {
        AnalyticStroke stroke = AnalyticStroke.GOOD;
        Trace seen = stroke.trace(60, 1, Side.RIGHT, 0.3, 0.02, 1);
        Tracked none = Tracked.notSeen(null, "hidden");
        for (EventKind kind : List.of(EventKind.BACKSWING_END, EventKind.FASTEST_TURN, EventKind.STOP)) {
            int own =
                    Objects.requireNonNull(only(seen, Setup.NONE, 1).event(kind).frame());
            List<FrameTrace> frames = new ArrayList<>(seen.frames());
            FrameTrace f = frames.get(own);
            frames.set(own, new FrameTrace(own, f.seconds(), none, none, f.rig(), null, Double.NaN));
            Trace gap = new Trace(
                    seen.width(),
                    seen.height(),
                    frames,
                    seen.motion(),
                    seen.freeLengthPx(),
                    seen.freeLengthSdPx(),
                    null);
            int shown =
                    Objects.requireNonNull(only(gap, Setup.NONE, 1).event(kind).frame());
            assertThat(shown).as(kind.id()).isNotEqualTo(own).isBetween(own - 2, own + 2);
        }
    }

    @Test
    void aTurnOfWhichNeitherStartNorReleaseWasSeenIsNoCast() {
        AnalyticStroke stroke = AnalyticStroke.GOOD;
        Map<EventKind, Double> m = stroke.moments();
        Trace whole = stroke.trace(60, 1, Side.RIGHT, 0.3, 0.02, 1);
        Tracked hidden = Tracked.notSeen(null, "hidden on purpose");
        List<FrameTrace> cut = whole.frames().stream()
                .filter(f -> f.seconds() > m.get(EventKind.FORWARD_START) - 0.15)
                .map(f -> f.seconds() < m.get(EventKind.PEAK_BEND)
                        ? f
                        : new FrameTrace(f.frame(), f.seconds(), f.grip(), hidden, hidden, f.blank(), f.buttAngleSd()))
                .toList();
        Trace trace = new Trace(
                whole.width(), whole.height(), cut, whole.motion(), whole.freeLengthPx(), whole.freeLengthSdPx(), null);
        assertThat(new StrokeTimer().time(trace, Setup.NONE, REAL_TIME)).isEmpty();
        assertThat(new StrokeTimer().time(whole, Setup.NONE, REAL_TIME)).hasSize(1);
    }

    @Test
    void aReleaseThatWasNotWatchedLiesBetweenTheLoadedAndTheStraightRod() {
        AnalyticStroke stroke = AnalyticStroke.GOOD;
        Map<EventKind, Double> m = stroke.moments();
        double release = m.get(EventKind.RELEASE);
        Trace whole = stroke.trace(60, 1, Side.RIGHT, 0.3, 0.02, 1);
        Tracked hidden = Tracked.notSeen(null, "hidden on purpose");
        List<FrameTrace> frames = whole.frames().stream()
                .map(f -> {
                    boolean early = f.seconds() < m.get(EventKind.PEAK_BEND) - 0.1;
                    boolean around = Math.abs(f.seconds() - release) < 0.05;
                    return new FrameTrace(
                            f.frame(),
                            f.seconds(),
                            f.grip(),
                            around ? hidden : f.tip(),
                            early ? f.rig() : hidden,
                            f.blank(),
                            f.buttAngleSd());
                })
                .toList();
        Trace trace = new Trace(
                whole.width(),
                whole.height(),
                frames,
                whole.motion(),
                whole.freeLengthPx(),
                whole.freeLengthSdPx(),
                null);
        Event told = only(trace, Setup.NONE, 1).event(EventKind.RELEASE);
        assertThat(told.seconds()).as(told.basis()).isNotNull();
        assertThat(Math.abs(told.seconds() - release)).isLessThan(2.5 * told.plusMinusSeconds());
        assertThat(told.plusMinusSeconds()).isGreaterThan(0.02);
    }

    @Test
    void measuresOfACleanStrokeAreThoseOfItsFormulas() {
        AnalyticStroke stroke = AnalyticStroke.GOOD;
        Stroke s = only(stroke.trace(120, 1, Side.RIGHT, 0.3, 0, 2), METRES, 1);
        Map<EventKind, Double> m = stroke.moments();
        double forward = m.get(EventKind.RELEASE) - m.get(EventKind.FORWARD_START);
        double back = m.get(EventKind.BACKSWING_END) - m.get(EventKind.BACKSWING_START);
        assertThat(value(s, "backswingSeconds")).isEqualTo(back, offset(0.03));
        assertThat(value(s, "forwardSeconds")).isEqualTo(forward, offset(0.01));
        assertThat(value(s, "tempo")).isEqualTo(back / forward, offset(0.25));
        assertThat(value(s, "rearmostDeg")).isEqualTo(140, offset(0.7));
        assertThat(value(s, "heldAngleDeg")).isEqualTo(55, offset(1.0));
        assertThat(value(s, "peakForwardRate")).isEqualTo(85 * 1.875 / 0.32, offset(15.0));
        double deepest = 1 - stroke.chord(m.get(EventKind.PEAK_BEND));
        assertThat(value(s, "compression")).isEqualTo(deepest, offset(0.005));
        assertThat(value(s, "ringHz")).isEqualTo(AnalyticStroke.RING_HZ, offset(0.15));
        assertThat(value(s, "dropLength")).isEqualTo(3.3 * 160 / 430, offset(0.02));
        assertThat(value(s, "launchAngleDeg")).isEqualTo(AnalyticStroke.FLIGHT_DEG, offset(1.0));
        double speed = AnalyticStroke.FLIGHT_PX * 3.3 / AnalyticStroke.FREE_PX;
        assertThat(value(s, "launchSpeed")).isEqualTo(speed, offset(0.04 * speed));
        assertThat(value(s, "fallAt500msDeg")).isEqualTo(0, offset(1.2));
        assertThat(value(s, "lineSlack")).isLessThan(0.04);
    }

    @Test
    void withoutALengthMetresCannotBeTold() {
        Stroke s = only(AnalyticStroke.GOOD.trace(60, 1, Side.RIGHT, 0.5, 0, 3), Setup.NONE, 1);
        for (String id : List.of("peakTipSpeed", "launchSpeed", "dropLength")) {
            assertThat(s.measure(id).value()).as(id).isNull();
            assertThat(s.measure(id).basis()).contains("give the rod's length");
        }
        assertThat(value(s, "peakTipSpeedPx")).isPositive();
        assertThat(Arrays.stream(s.kinematics().tipSpeed()).allMatch(Double::isNaN))
                .isTrue();
    }

    @Test
    void aRodLengthScalesWithAStatedGuessAtTheHandle() {
        Setup rod = new Setup(3.9, null, null, null, null, null, List.of());
        Stroke s = only(AnalyticStroke.GOOD.trace(60, 1, Side.RIGHT, 0.5, 0, 3), rod, 1);
        Measure drop = s.measure("dropLength");
        assertThat(drop.basis()).contains("estimated");
        assertThat(value(s, "dropLength")).isEqualTo(3.9 * 0.835 * 160 / 430, offset(0.03));
        assertThat(drop.plusMinus()).isGreaterThan(0.03 * value(s, "dropLength"));
    }

    @Test
    void everyEventAndMeasureIsPresentOrSaysWhyNot() {
        Stroke s = only(AnalyticStroke.GOOD.trace(60, 1, Side.RIGHT, 0.5, 0, 3), Setup.NONE, 1);
        assertThat(s.events()).containsOnlyKeys(EventKind.values());
        assertThat(s.events().values()).allSatisfy(e -> {
            assertThat(e.basis()).isNotBlank();
            assertThat(e.seconds() == null).isEqualTo(Double.isNaN(e.plusMinusSeconds()));
            assertThat(e.seconds() == null).isEqualTo(e.frame() == null);
        });
        assertThat(s.measures()).extracting(Measure::id).doesNotHaveDuplicates().hasSize(Quantity.values().length);
        assertThat(s.measures()).allSatisfy(m -> {
            assertThat(m.basis()).isNotBlank();
            assertThat(m.value() == null).as(m.id()).isEqualTo(Double.isNaN(m.plusMinus()));
        });
        assertThat(s.event(EventKind.CLIP_NOD).basis()).contains("the clip ends");
        assertThat(s.measure("lowerHandPullSpeed").basis()).contains("body");
        assertThat(s.measure("launchAngleAgainstBestDeg").basis()).contains("flight");
    }

    @Test
    void anEventsFrameIsTheOneShownThen() {
        Trace trace = AnalyticStroke.GOOD.trace(60, 4, Side.RIGHT, 0.3, 0, 4);
        Stroke s = only(trace, Setup.NONE, 4);
        for (Event e : s.events().values()) {
            if (e.seconds() != null) {
                double shown = trace.frames().get(e.frame()).seconds();
                assertThat(e.seconds() - shown).as(e.kind().id()).isBetween(-1e-6, 4 / 60.0 + 1e-6);
            }
        }
    }

    @Test
    void whereTheRigIsNeverSeenTheBlankTellsTheRelease() {
        Trace seen = AnalyticStroke.GOOD.trace(60, 1, Side.RIGHT, 0.4, 0, 5);
        NoisyTrace out = new NoisyTrace(1920, 1080, 0.4, 0, 6);
        seen.frames().forEach(f -> out.add(f.seconds(), f.blank(), true, null, 1));
        Stroke s = only(out.trace(), Setup.NONE, 1);
        Event release = s.event(EventKind.RELEASE);
        assertThat(release.seconds()).isEqualTo(AnalyticStroke.GOOD.release(), offset(0.03));
        assertThat(release.basis()).contains("estimated from the blank");
        assertThat(release.plusMinusSeconds()).isGreaterThan(0.01);
        assertThat(s.measure("lineSlack").value()).isNull();
        assertThat(s.measure("launchSpeed").value()).isNull();
    }

    /** The rig is lost as it flies off, and a thing that goes slowly on its own way from elsewhere is taken for it. */
    @Test
    void aFlightThatDoesNotBeginWhereTheRigWasTellsNoLaunch() {
        Trace seen = AnalyticStroke.GOOD.trace(120, 1, Side.RIGHT, 0.4, 0, 5);
        double release = AnalyticStroke.GOOD.release();
        List<FrameTrace> frames = seen.frames().stream()
                .map(f -> {
                    double late = f.seconds() - release;
                    Point other = Objects.requireNonNull(f.tip().position()).plus(new Point(20, 15 + 500 * late));
                    return late <= 0 ? f : f.withRig(Tracked.seen(other, 1));
                })
                .toList();
        Stroke s = only(seen.with(frames), METRES, 1);
        assertThat(s.event(EventKind.RELEASE).seconds()).isEqualTo(release, offset(0.02));
        assertThat(s.measure("launchSpeed").value()).isNull();
        assertThat(s.measure("launchSpeed").basis()).contains("does not go on from where the rig was");
    }

    @Test
    void aClipOfThirtyPicturesASecondSaysWhatItCannotTime() {
        Stroke coarse = only(AnalyticStroke.GOOD.trace(30, 1, Side.RIGHT, 0.3, 0, 9), Setup.NONE, 1);
        Event bend = coarse.event(EventKind.PEAK_BEND);
        assertThat(bend.basis()).contains("30 pictures a second can't place it closer than ± 10 ms");
        Stroke fine = only(AnalyticStroke.GOOD.trace(120, 1, Side.RIGHT, 0.3, 0, 9), Setup.NONE, 1);
        assertThat(fine.event(EventKind.PEAK_BEND).basis()).doesNotContain("pictures a second");
        assertThat(bend.plusMinusSeconds())
                .isGreaterThan(fine.event(EventKind.PEAK_BEND).plusMinusSeconds());
    }

    @Test
    void aGivenSideIsBelieved() {
        Trace trace = AnalyticStroke.GOOD.trace(60, 1, Side.RIGHT, 0.5, 0, 7);
        Setup left = new Setup(null, null, null, null, Side.LEFT, null, List.of());
        assertThat(new StrokeTimer().time(trace, left, REAL_TIME)).isEmpty();
    }

    @Test
    void aLostForwardStrokeIsNoStroke() {
        Trace trace = AnalyticStroke.GOOD.trace(60, 1, Side.RIGHT, 0.5, 0, 8);
        Trace none = new Trace(1920, 1080, trace.frames(), trace.motion(), Double.NaN, Double.NaN, "no rod was found");
        assertThat(new StrokeTimer().time(none, Setup.NONE, REAL_TIME)).isEmpty();
    }
}
