package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.footage.SlowMotion;
import bendline.geometry.Polyline;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The deepest bend is read as deep as it is, be there few frames of it, and not told where it may have been missed. */
class BendSizeTest {

    private static final double LOADED_FROM = 2.1;
    private static final double SECONDS = 0.3;
    private static final double DEEPEST = LOADED_FROM + SECONDS / 2;
    private static final double TURN_DEG = 95;

    /** A rod that turns forward and is bent like half a swing of a sine meanwhile. */
    private static Trace trace(double fps) {
        return new MovingRod(
                        t -> 58
                                + 84 * AnalyticStroke.step((t - 0.4) / 1.2)
                                - 84 * AnalyticStroke.step((t - LOADED_FROM + 0.02) / SECONDS),
                        t -> TURN_DEG * Math.sin(Math.PI * Math.max(0, Math.min(1, (t - LOADED_FROM) / SECONDS))),
                        LOADED_FROM + SECONDS)
                .trace(fps, 4);
    }

    /** The same with the tip not seen within a time of the deepest bend. */
    private static Trace hidden(Trace whole, double seconds) {
        List<FrameTrace> frames = new ArrayList<>();
        for (FrameTrace f : whole.frames()) {
            Tracked lost = Tracked.notSeen(f.tip().position(), "lost before the woods");
            frames.add(
                    Math.abs(f.seconds() - DEEPEST) > seconds
                            ? f
                            : new FrameTrace(
                                    f.frame(), f.seconds(), f.grip(), lost, f.rig(), f.blank(), f.buttAngleSd()));
        }
        return new Trace(1920, 1080, frames, whole.motion(), MovingRod.FREE_PX, 0.7, null);
    }

    private static Stroke stroke(Trace trace) {
        List<Stroke> strokes = new StrokeTimer().time(trace, Setup.NONE, new SlowMotion(1, "as filmed"));
        assertThat(strokes).hasSize(1);
        return strokes.get(0);
    }

    private static double deepest() {
        Polyline bent = MovingRod.blank(0, TURN_DEG);
        return 1 - bent.first().distance(bent.last()) / bent.length();
    }

    /** At 30 frames a second five frames are bent: as many as strays may be. */
    @ParameterizedTest
    @ValueSource(doubles = {30, 60, 240})
    void theDeepestOfFewFramesCounts(double fps) {
        Stroke s = stroke(trace(fps));
        Measure m = s.measure("compression");
        assertThat(m.value()).isEqualTo(deepest(), within(2 * m.plusMinus()));
        assertThat(m.plusMinus()).isLessThan(0.03);
        Event e = s.event(EventKind.PEAK_BEND);
        assertThat(e.seconds()).isEqualTo(DEEPEST, within(Math.max(0.5 / fps, 3 * e.plusMinusSeconds())));
    }

    @Test
    void whatMayHaveBeenDeeperWhileTheTipWasHiddenIsNotTold() {
        Stroke s = stroke(hidden(trace(60), 0.085));
        assertThat(s.event(EventKind.PEAK_BEND).seconds()).isNull();
        for (String id : List.of("compression", "earlyLoad", "peakBendLag")) {
            assertThat(s.measure(id).value()).as(id).isNull();
            assertThat(s.measure(id).basis()).as(id).contains("tip");
        }
    }

    /** The size has a side: it passes through the straight, where the chord ratio turns back. */
    @ParameterizedTest
    @ValueSource(doubles = {80, 20, -20, -80})
    void aTipThatTrailsCountsAsMuchAsOneThatLeadsButTheOtherWay(double turn) {
        Trace bent = new MovingRod(t -> 100, t -> turn, 9).trace(60, 1);
        RodSeries rod = RodSeries.of(bent, new SlowMotion(1, "as filmed"), Side.RIGHT);
        BendSize size = BendSize.of(rod);
        Polyline shape = MovingRod.blank(0, turn);
        double right = Math.sqrt(1 - shape.first().distance(shape.last()) / shape.length());
        for (int i = 0; i < rod.size(); i++) {
            if (!Double.isNaN(rod.chord()[i])) {
                assertThat(size.value()[i]).isEqualTo(Math.signum(turn) * right, within(5 * size.sd()[i]));
            }
        }
    }
}
