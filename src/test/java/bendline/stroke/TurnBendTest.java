package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** Casts of which no frame alone tells, and turns that only seem to be casts. The motions are written down as formulas. */
class TurnBendTest {

    private static final AnalyticStroke GOOD = AnalyticStroke.GOOD;

    private static List<Stroke> strokes(Trace trace) {
        return new StrokeTimer().time(trace, Setup.NONE, new SlowMotion(1, "as filmed"));
    }

    private static Trace seen(Trace whole, UnaryOperator<FrameTrace> seen) {
        List<FrameTrace> frames = whole.frames().stream().map(seen).toList();
        return new Trace(1920, 1080, frames, whole.motion(), whole.freeLengthPx(), whole.freeLengthSdPx(), null);
    }

    /** The same with uncertainties of the tip so many times as large as they are. */
    private static Trace doubted(Trace whole, double times) {
        return seen(
                whole,
                f -> f.tip().seen() && f.tip().position() != null
                        ? new FrameTrace(
                                f.frame(),
                                f.seconds(),
                                f.grip(),
                                Tracked.seen(f.tip().position(), times * f.tip().sdPx()),
                                f.rig(),
                                f.blank(),
                                f.buttAngleSd())
                        : f);
    }

    private static long bentAlone(Trace trace) {
        RodSeries rod = RodSeries.of(trace, new SlowMotion(1, "as filmed"), Side.RIGHT);
        long bent = 0;
        for (int i = 0; i < rod.size(); i++) {
            double compression = 1 - rod.chord()[i];
            bent += compression >= 0.012 && compression >= 3 * rod.chordSd()[i] ? 1 : 0;
        }
        return bent;
    }

    @Test
    void aCastIsToldFromManyFramesOfWhichNoneIsSureThatTheRodBends() {
        Trace trace = doubted(GOOD.withLoad(45, -0.1, 0).trace(60, 1, Side.RIGHT, 1, 0, 14), 6);
        assertThat(bentAlone(trace)).as("frames that tell by themselves").isLessThan(2);
        assertThat(strokes(trace)).hasSize(1);
    }

    /** How far out along its own curve the blank is seen does not change how much that curve is bent. */
    @Test
    void aTipThatIsUnsureAlongTheBlankOnlyLeavesTheBendClear() {
        Trace sure = GOOD.withLoad(45, -0.1, 0).trace(60, 1, Side.RIGHT, 1, 0, 14);
        Trace along = seen(
                doubted(sure, 6),
                f -> f.blank() == null
                        ? f
                        : new FrameTrace(
                                f.frame(), f.seconds(), f.grip(), f.tip(), f.rig(), f.blank(), f.buttAngleSd(), 1.5));
        assertThat(bentAlone(along)).isEqualTo(bentAlone(sure)).isGreaterThan(2);
    }

    /** A slack line loads the rod late and little: then it counts that the rig is seen to fly off. */
    @Test
    void aRodThatBendsNoMoreThanABareOneCastsIfItsRigIsSeenToLeave() {
        Trace trace = GOOD.withLoad(24, -0.1, 0.3).trace(60, 1, Side.RIGHT, 0.3, 0, 14);
        assertThat(bentAlone(trace)).as("frames that tell by themselves").isLessThan(2);
        assertThat(strokes(trace)).hasSize(1);
        Tracked unseen = Tracked.notSeen(null, "too small");
        assertThat(strokes(seen(
                        trace,
                        f -> new FrameTrace(
                                f.frame(), f.seconds(), f.grip(), f.tip(), unseen, f.blank(), f.buttAngleSd()))))
                .as("a swing without a rig")
                .isEmpty();
    }

    /** A wave along the blank shortens it as a bend does, but its tip hardly trails: the trace is wrong. */
    @Test
    void aBlankThatIsShortButHardlyTrailsIsNotBent() {
        NoisyTrace out = new NoisyTrace(1920, 1080, 0.5, 0, 3);
        DoubleUnaryOperator angle =
                t -> 58 + 84 * AnalyticStroke.step((t - 0.5) / 1.2) - 80 * AnalyticStroke.step((t - 2.2) / 0.4);
        for (int i = 0; i < 4 * 60; i++) {
            double t = i / 60.0;
            double wave = 23 * AnalyticStroke.step((t - 2.2) / 0.2) * AnalyticStroke.step((2.7 - t) / 0.1);
            Polyline blank = wavy(angle.applyAsDouble(t), wave);
            out.add(t, blank, true, null, blank.first().distance(blank.last()) / MovingRod.FREE_PX);
        }
        Trace trace = doubted(out.trace(), 11);
        assertThat(bentAlone(trace)).isLessThan(2);
        assertThat(strokes(trace)).isEmpty();
    }

    private static Polyline wavy(double angle, double wave) {
        List<Point> points = new ArrayList<>();
        Point p = new Point(900, 700);
        points.add(p);
        for (int i = 0; i < 40; i++) {
            double u = (i + 0.5) / 40;
            double a = Math.toRadians(angle + wave * (Math.sin(2 * Math.PI * u) + 1.4 * u * u));
            p = p.plus(new Point(Math.cos(a), -Math.sin(a)).times(MovingRod.FREE_PX / 40));
            points.add(p);
        }
        return new Polyline(points);
    }

    /** Of each six frames four are lost: fewer than are asked of 30 a second, yet none of the rod's ways goes unseen. */
    @Test
    void manyFramesASecondMayLoseMostOfThem() {
        Trace whole = GOOD.trace(240, 1, Side.RIGHT, 0.7, 0, 15);
        Tracked lost = Tracked.notSeen(null, "lost");
        assertThat(strokes(seen(
                        whole,
                        f -> f.frame() % 6 > 1
                                ? new FrameTrace(f.frame(), f.seconds(), lost, lost, f.rig(), null, Double.NaN)
                                : f)))
                .hasSize(1);
    }

    /** The tip is lost in the wait behind already; the rod was whole on the way back and followed since. */
    @Test
    void aRodThatWasSeenWholeOnItsWayBackIsKnown() {
        Trace whole = GOOD.trace(60, 1, Side.RIGHT, 0.7, 0.03, 14);
        double from = GOOD.turnStart() - 0.35;
        UnaryOperator<FrameTrace> tipLost =
                f -> f.seconds() > from && f.seconds() < GOOD.release() + 0.15 && f.blank() != null
                        ? new FrameTrace(
                                f.frame(),
                                f.seconds(),
                                f.grip(),
                                Tracked.notSeen(null, "lost before the woods"),
                                f.rig(),
                                f.blank().cut(0.8 * f.blank().length()),
                                f.buttAngleSd())
                        : f;
        assertThat(strokes(seen(whole, tipLost))).hasSize(1);
        UnaryOperator<FrameTrace> rodLost = f -> f.seconds() > from - 0.2 && f.seconds() < from
                ? new FrameTrace(f.frame(), f.seconds(), f.tip(), f.tip(), f.rig(), null, Double.NaN)
                : tipLost.apply(f);
        assertThat(strokes(seen(whole, rodLost))).as("lost between").isEmpty();
    }

    /** What swings back bent and forward stiff is not told as a cast; its way back none to the other side, either. */
    @Test
    void aWayBackIsNoCastToTheOtherSide() {
        DoubleUnaryOperator angle =
                t -> 40 + 105 * AnalyticStroke.step((t - 0.5) / 0.8) - 90 * AnalyticStroke.step((t - 1.9) / 0.4);
        DoubleUnaryOperator trails =
                t -> -60 * (AnalyticStroke.step((t - 0.5) / 0.4) - AnalyticStroke.step((t - 0.9) / 0.4));
        assertThat(strokes(new MovingRod(angle, trails, 1.2).trace(60, 4))).isEmpty();
    }
}
