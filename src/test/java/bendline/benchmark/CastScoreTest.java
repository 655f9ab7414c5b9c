package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Quality;
import bendline.footage.ClipInfo;
import bendline.footage.SlowMotion;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.scene.Setup;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.technique.Finding;
import bendline.technique.Review;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CastScoreTest {

    private static final int FRAMES = 100;
    private static final double STEP = 0.02;

    private static TruthClip truth(List<TruthCast> casts) {
        List<TruthFrame> frames = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            Polyline rod = new Polyline(List.of(new Point(0, 0), new Point(100, 0)));
            frames.add(new TruthFrame(
                    i * STEP,
                    rod.last(),
                    true,
                    null,
                    false,
                    true,
                    rod.first(),
                    rod,
                    rod,
                    90,
                    0.9,
                    Homography.IDENTITY));
        }
        return new TruthClip("made up", 640, 480, frames, casts);
    }

    private static TruthCast cast(double release, String rushed) {
        return new TruthCast(
                Map.of("release", release, "stop", release - 0.1),
                Map.of("flat-rushed-backswing", rushed, "something-else", "clear"),
                40,
                35);
    }

    private static ClipAnalysis told(List<CastAnalysis> casts) {
        List<Double> times = new ArrayList<>();
        List<FrameTrace> frames = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            times.add(i * STEP);
            Tracked none = Tracked.notSeen(null, "made up");
            frames.add(new FrameTrace(i, i * STEP, none, none, none, null, Double.NaN));
        }
        ClipInfo info = new ClipInfo(
                640, 480, FRAMES, FRAMES * STEP, 0, false, new SlowMotion(1, "as played"), times, List.of());
        Trace trace = new Trace(
                640,
                480,
                frames,
                new CameraMotion(Collections.nCopies(FRAMES, Homography.IDENTITY), 0, true),
                100,
                1,
                null);
        Quality quality = new Quality(50, 0.006, false, 0, true, FRAMES, 0, 0, 0, Double.NaN, List.of(), List.of());
        return new ClipAnalysis(Path.of("made-up.mp4"), info, Setup.NONE, trace, quality, casts);
    }

    private static CastAnalysis analysis(double release, Finding.State state) {
        Map<EventKind, Event> events = new EnumMap<>(EventKind.class);
        for (EventKind kind : EventKind.values()) {
            events.put(kind, Event.unknown(kind, "made up"));
        }
        events.put(EventKind.RELEASE, new Event(EventKind.RELEASE, release, 0.012, 1, "made up"));
        double[] two = {0.5, 0.52};
        double[] chord = {0.91, 0.88};
        Kinematics k = new Kinematics(25, two, two, two, two, two, chord, two, two, two);
        Stroke stroke = new Stroke(
                1,
                Setup.Side.RIGHT,
                25,
                26,
                k,
                events,
                List.of(new Measure("launchSpeed", "launch speed", "m/s", 42.0, 1, "made up")));
        Finding finding =
                new Finding("flat-rushed-backswing", "title", state, 0.5, List.of(), List.of(), "", "", "", "");
        return new CastAnalysis(stroke, new Review(List.of(finding), List.of(), null, ""));
    }

    @Test
    void aMomentIsScoredInFramesAndAnUnknownOneIsNotTold() {
        CastScore s =
                CastScore.of(told(List.of(analysis(1.03, Finding.State.FOUND))), truth(List.of(cast(1.0, "clear"))));
        assertThat(s.events().errors("release"::equals).median()).isEqualTo(1.5, within(1e-9));
        assertThat(s.events().withinStated("release"::equals)).isEqualTo(new Tally(0, 1));
        assertThat(s.events().told(k -> true)).isEqualTo(new Tally(1, 2));
        assertThat(s.launchSpeed().median()).isEqualTo(0.05, within(1e-9));
        assertThat(s.launchAngleDeg().count()).isZero();
        assertThat(s.compression().values()).hasSize(2);
        assertThat(s.compression().quantile(1)).isEqualTo(0.02, within(1e-9));
    }

    @Test
    void verdictsAreCountedByGradeAndFaultsNotLookedForAreLeftOut() {
        CastScore alarm =
                CastScore.of(told(List.of(analysis(1.0, Finding.State.FOUND))), truth(List.of(cast(1.0, "none"))));
        CastScore miss =
                CastScore.of(told(List.of(analysis(1.0, Finding.State.CLEAR))), truth(List.of(cast(1.0, "clear"))));
        CastScore both = alarm.with(miss);
        assertThat(both.findings().entries()).hasSize(2);
        assertThat(both.findings().falseAlarms()).isEqualTo(new Tally(1, 1));
        assertThat(both.findings().misses()).isEqualTo(new Tally(1, 1));
        assertThat(both.findings().undecided()).isEqualTo(new Tally(0, 2));
    }

    @Test
    void aCastNobodyMadeIsInventedAndOneNotReportedIsOverlooked() {
        CastScore invented = CastScore.of(told(List.of(analysis(1.0, Finding.State.CLEAR))), truth(List.of()));
        assertThat(invented.invented()).isEqualTo(1);
        CastScore overlooked = CastScore.of(told(List.of()), truth(List.of(cast(1.0, "clear"))));
        assertThat(overlooked.found()).isEqualTo(new Tally(0, 1));
        assertThat(overlooked.events().told(k -> true)).isEqualTo(new Tally(0, 2));
        assertThat(overlooked.findings().entries().get(0).verdict()).isEqualTo("no-cast");
        CastScore far =
                CastScore.of(told(List.of(analysis(1.9, Finding.State.CLEAR))), truth(List.of(cast(1.0, "clear"))));
        assertThat(far.found()).isEqualTo(new Tally(0, 1));
        assertThat(far.invented()).isEqualTo(1);
    }

    @Test
    void theTableMarksMisses() {
        ClipScore score = ClipScore.of(
                told(List.of(analysis(1.03, Finding.State.FOUND))),
                truth(List.of(cast(1.0, "clear"))),
                Map.of("CSRT", PointScore.NONE.plus(new Point(0, 0), true, new Point(3, 4), new Point(0, 1))));
        String table = new BenchmarkTable().set("made up", score).details(score).toString();
        assertThat(table)
                .contains("| tip, median error where seen | ≤ 1 px | not told ✗ | 5.00 px | – | – |")
                .contains("both call seen | – | – | 1.00 and 5.00 px | – | – |")
                .contains("| tip lost, or wrong by more than 20 px | ≤ 1 % | 100.0 % (100 of 100) ✗ | 0.0 % (0 of 1) |")
                .contains("| release, 68 % (95 %) of errors | ≤ 1 frame | 1.50 frames ✗ (1.50) |")
                .contains("| casts reported, of those made | all | 100.0 % (1 of 1) |")
                .contains("| flat-rushed-backswing | clear | 1 | 0 | 0 | 0 |");
    }

    @Test
    void aProcessOfItsOwnTellsItsPeak() throws Exception {
        assertThat(Load.peakMiBOfThisProcess())
                .satisfiesAnyOf(v -> assertThat(v).isNaN(), v -> assertThat(v).isBetween(20.0, 16_000.0));
    }
}
