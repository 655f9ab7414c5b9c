package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Casts of which nothing was seen for a while about the turn of the rod. The motion is written down as formulas. */
class GapTest {

    private static final double FPS = 60;

    /** Uncertainties within which all of some seventy moments are to lie: 99 % of each. */
    private static final double SURE = 2.6;

    /** Least of a gap that the uncertainty of a moment within must be: half of what an even chance gives, which forty draws make uneven. */
    private static final double OPEN = 0.5 / Math.sqrt(12);

    private static final List<EventKind> ABOUT_THE_TURN = List.of(EventKind.BACKSWING_END, EventKind.FORWARD_START);

    private static final List<EventKind> MOMENTS = List.of(
            EventKind.BACKSWING_START,
            EventKind.BACKSWING_END,
            EventKind.FORWARD_START,
            EventKind.FASTEST_TURN,
            EventKind.PEAK_BEND,
            EventKind.RELEASE,
            EventKind.STOP);

    private static FrameTrace nothing(FrameTrace f) {
        Tracked lost = Tracked.notSeen(null, "hidden");
        return new FrameTrace(f.frame(), f.seconds(), lost, lost, lost, null, Double.NaN);
    }

    private static Stroke read(AnalyticStroke stroke, UnaryOperator<FrameTrace> seen) {
        Trace whole = stroke.trace(FPS, 1, Side.RIGHT, 0.7, 0, 21);
        List<FrameTrace> frames = whole.frames().stream().map(seen).toList();
        Trace cut = new Trace(1920, 1080, frames, whole.motion(), whole.freeLengthPx(), whole.freeLengthSdPx(), null);
        List<Stroke> strokes = new StrokeTimer().time(cut, Setup.NONE, new SlowMotion(1, "as filmed"));
        assertThat(strokes).hasSize(1);
        return strokes.get(0);
    }

    /**
     * A rushed cast turns where its backswing ends, a good one waits there: both must be reported, wherever the gap lies about the
     * start of the turn, and what happened within is told as openly as the gap is long.
     */
    @ParameterizedTest
    @CsvSource({
        "0.1, true, 0", "0.2, true, 0", "0.3, true, 0", "0.1, true, 0.5", "0.2, true, 0.5", "0.3, true, 0.5",
        "0.1, false, 0", "0.2, false, 0", "0.3, false, 0", "0.1, false, 0.5", "0.2, false, 0.5", "0.3, false, 0.5"
    })
    void aCastWithAGapAboutItsTurnIsReportedAndWhatLiesThereIsLeftOpen(double gap, boolean rushed, double after) {
        AnalyticStroke stroke = rushed ? AnalyticStroke.GOOD.withBackswing(0.7, 0.02, 155) : AnalyticStroke.GOOD;
        double from = stroke.turnStart() - (1 - after) * gap;
        double to = from + gap;
        Stroke told = read(stroke, f -> f.seconds() > from && f.seconds() < to ? nothing(f) : f);
        Map<EventKind, Double> truth = stroke.moments();
        for (EventKind kind : MOMENTS) {
            Event e = told.event(kind);
            Double at = e.seconds();
            if (at == null) {
                assertThat(kind).as("told though the gap is elsewhere").isIn(ABOUT_THE_TURN);
                continue;
            }
            assertThat(Math.abs(at - truth.get(kind))).as(kind.id()).isLessThan(SURE * e.plusMinusSeconds());
            if (at > from + 2 / FPS && at < to - 2 / FPS && gap > 0.15) {
                assertThat(e.plusMinusSeconds()).as(kind.id() + " in the gap").isGreaterThan(OPEN * gap);
            }
        }
    }
}
