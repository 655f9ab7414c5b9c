package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.technique.Finding;
import bendline.technique.TechniqueReview;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import org.junit.jupiter.api.Test;

/** What is not this cast's backswing is not taken for it: no fault rests on a fragment of another movement. */
class BackswingTest {

    private static final double FPS = 60;

    private static Stroke timed(Trace trace) {
        return new StrokeTimer()
                .time(trace, Setup.NONE, new SlowMotion(1, "given"))
                .get(0);
    }

    /** The trace with nothing seen from one time to another. */
    private static Trace without(Trace trace, double from, double to) {
        NoisyTrace out = new NoisyTrace(1920, 1080, 0.4, 0, 6);
        for (FrameTrace f : trace.frames()) {
            boolean gone = f.seconds() > from && f.seconds() < to || f.blank() == null;
            if (gone) {
                out.nothing(f.seconds());
            } else {
                out.add(f.seconds(), f.blank(), true, f.rig().position(), 1);
            }
        }
        return out.trace();
    }

    @Test
    void aSettleAsLongAsNoCastHasIsNotTold() {
        AnalyticStroke waits = AnalyticStroke.GOOD.withBackswing(1.8, 4.5, 140);
        Stroke s = timed(waits.trace(FPS, 1, Side.RIGHT, 0.4, 0, 3));
        assertThat(s.event(EventKind.BACKSWING_END).seconds()).isNull();
        assertThat(s.measure("settleSeconds").value()).isNull();
        assertThat(s.measure("tempo").value()).isNull();
        assertThat(s.event(EventKind.FORWARD_START).seconds()).isNotNull();
    }

    @Test
    void aWayBackBeyondALongGapIsNotThisCasts() {
        AnalyticStroke stroke = AnalyticStroke.GOOD.withBackswing(1.8, 1.4, 140);
        Trace whole = stroke.trace(FPS, 1, Side.RIGHT, 0.4, 0, 3);
        double end = timed(whole).event(EventKind.BACKSWING_END).seconds();
        Stroke s = timed(without(whole, end - 0.3, end + 0.8));
        assertThat(s.event(EventKind.BACKSWING_START).seconds()).isNull();
        assertThat(s.measure("settleSeconds").value()).isNull();
        Finding rush = new TechniqueReview()
                .review(s).findings().stream()
                        .filter(f -> f.id().equals("flat-rushed-backswing"))
                        .findFirst()
                        .orElseThrow();
        assertThat(rush.state()).isNotEqualTo(Finding.State.FOUND);
    }
}
