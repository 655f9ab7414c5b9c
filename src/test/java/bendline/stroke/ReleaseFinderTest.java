package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.scene.Setup.Side;
import bendline.signal.SmoothCurve;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** When the line is let go, where only the rod tells it. The motion is written down as formulas. */
class ReleaseFinderTest {

    private static final double FPS = 60;
    private static final AnalyticStroke STROKE = AnalyticStroke.GOOD;

    /** A stroke of which the rig is never seen. */
    private static RodSeries rod() {
        Trace whole = STROKE.trace(FPS, 1, Side.RIGHT, 0.7, 0, 5);
        Trace bare = new Trace(
                1920,
                1080,
                whole.frames().stream().map(ReleaseFinderTest::withoutRig).toList(),
                whole.motion(),
                whole.freeLengthPx(),
                whole.freeLengthSdPx(),
                null);
        return RodSeries.of(bare, new SlowMotion(1, "as filmed"), Side.RIGHT);
    }

    private static FrameTrace withoutRig(FrameTrace f) {
        Tracked lost = Tracked.notSeen(null, "hidden");
        return new FrameTrace(f.frame(), f.seconds(), f.grip(), f.tip(), lost, f.blank(), f.buttAngleSd());
    }

    /** Chord ratios and how fast the lag grows, with a bend of a tenth of a second that is not there. */
    private static Curves slipping(Curves c, double from) {
        double to = from + 0.1;
        return new Curves(
                c.angle(),
                c.forwardRate(),
                c.handRate(),
                changed(c.chord(), from, to, 0.5),
                c.lag(),
                changed(c.lagRate(), from, to, -90));
    }

    private static SmoothCurve changed(SmoothCurve curve, double from, double to, double value) {
        int n = (int) Math.round((curve.end() - curve.start()) * FPS) + 1;
        double[] t = new double[n];
        double[] v = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = curve.start() + i * (curve.end() - curve.start()) / (n - 1);
            v[i] = t[i] > from && t[i] < to ? value : curve.at(t[i]);
        }
        return new SmoothCurve(t, v, new double[n]);
    }

    private static Found find(RodSeries rod, Curves curves) {
        Map<EventKind, Double> truth = STROKE.moments();
        return new ReleaseFinder(rod, 1 / FPS)
                .find(truth.get(EventKind.FASTEST_TURN), STROKE.release() + 0.35, curves, truth.get(EventKind.STOP));
    }

    /** The rig taken for another thing that stays by the tip for a while after the line is gone, and then leaves. */
    private static RodSeries withARigThatStays(double seconds) {
        Trace whole = STROKE.trace(FPS, 1, Side.RIGHT, 0.7, 0, 5);
        List<FrameTrace> frames = whole.frames().stream()
                .map(f -> {
                    double late = f.seconds() - STROKE.release();
                    if (late < -0.02 || f.tip().position() == null) {
                        return f;
                    }
                    double away = late < seconds ? 0 : 2000 * (late - seconds);
                    Point at = f.tip().position().plus(new Point(away, AnalyticStroke.DROP_PX + away));
                    return new FrameTrace(
                            f.frame(), f.seconds(), f.grip(), f.tip(), Tracked.seen(at, 1), f.blank(), f.buttAngleSd());
                })
                .toList();
        Trace changed =
                new Trace(1920, 1080, frames, whole.motion(), whole.freeLengthPx(), whole.freeLengthSdPx(), null);
        return RodSeries.of(changed, new SlowMotion(1, "as filmed"), Side.RIGHT);
    }

    /** While another thing inside the circle is taken for the rig, the true one seems off it as soon as it is seen again. */
    @Test
    void anotherThingInsideTheCircleBeforeTheReleaseDoesNotBringItForward() {
        double fps = 240;
        Trace whole = STROKE.trace(fps, 1, Side.RIGHT, 0.7, 0, 5);
        List<FrameTrace> frames = whole.frames().stream()
                .map(f -> {
                    double early = STROKE.release() - f.seconds();
                    boolean wrong = early > 0.05 && early < 0.13;
                    Point rig = f.rig().position();
                    Point tip = f.tip().position();
                    if (!wrong || rig == null || tip == null) {
                        return f;
                    }
                    Point at = tip.plus(rig.minus(tip).times(0.92));
                    return new FrameTrace(
                            f.frame(), f.seconds(), f.grip(), f.tip(), Tracked.seen(at, 4), f.blank(), f.buttAngleSd());
                })
                .toList();
        Trace changed =
                new Trace(1920, 1080, frames, whole.motion(), whole.freeLengthPx(), whole.freeLengthSdPx(), null);
        RodSeries rod = RodSeries.of(changed, new SlowMotion(1, "as filmed"), Side.RIGHT);
        Found rig = new ReleaseFinder(rod, 1 / fps).byRig(STROKE.release() - 0.1, STROKE.release() + 0.2);
        assertThat(rig.value()).isCloseTo(STROKE.release(), within(0.012));
    }

    /** A rod that is dropped at once springs towards the rig before the two part: 0.083 s pass until the rig is back on its circle. */
    @ParameterizedTest
    @ValueSource(doubles = {60, 120, 240})
    void aRigThatLeavesTheCircleInwardsIsLetGoBeforeItCrossesIt(double fps) {
        Trace whole = STROKE.trace(fps, 1, Side.RIGHT, 0.7, 0, 5);
        List<FrameTrace> frames = whole.frames().stream()
                .map(f -> {
                    double late = f.seconds() - STROKE.release();
                    Point tip = f.tip().position();
                    if (late <= 0 || tip == null) {
                        return f;
                    }
                    double share = 1 - 200 * late * late + 2400 * late * late * late;
                    Point at = tip.plus(new Point(0, AnalyticStroke.DROP_PX * share));
                    return new FrameTrace(
                            f.frame(), f.seconds(), f.grip(), f.tip(), Tracked.seen(at, 1), f.blank(), f.buttAngleSd());
                })
                .toList();
        Trace changed =
                new Trace(1920, 1080, frames, whole.motion(), whole.freeLengthPx(), whole.freeLengthSdPx(), null);
        RodSeries rod = RodSeries.of(changed, new SlowMotion(1, "as filmed"), Side.RIGHT);
        Found rig = new ReleaseFinder(rod, 1 / fps).byRig(STROKE.release() - 0.1, STROKE.release() + 0.2);
        assertThat(rig.value()).isCloseTo(STROKE.release(), within(0.011));
        assertThat(rig.value()).isCloseTo(STROKE.release(), within(2 * rig.sd()));
    }

    /** Two frames far apart in which the rig is misplaced are no departure; between them it lay on its circle. */
    @Test
    void singleSlipsInwardsDoNotBringTheReleaseForward() {
        double fps = 240;
        Trace whole = STROKE.trace(fps, 1, Side.RIGHT, 0.7, 0, 5);
        List<FrameTrace> frames = new ArrayList<>(whole.frames());
        for (double early : new double[] {0.08, 0.01}) {
            int t = (int) Math.round((STROKE.release() - early) * fps);
            FrameTrace f = frames.get(t);
            Point tip = Objects.requireNonNull(f.tip().position());
            Point rig = Objects.requireNonNull(f.rig().position());
            Point at = tip.plus(rig.minus(tip).times(0.93));
            frames.set(t, f.withRig(Tracked.seen(at, 1)));
        }
        RodSeries rod = RodSeries.of(whole.with(frames), new SlowMotion(1, "as filmed"), Side.RIGHT);
        Found rig = new ReleaseFinder(rod, 1 / fps).byRig(STROKE.release() - 0.1, STROKE.release() + 0.2);
        assertThat(rig.value()).isCloseTo(STROKE.release(), within(0.012));
    }

    /** Nothing pulls on a blank that is straight and stays so: what leaves the circle then is not the rig. */
    @Test
    void whatLeavesTheCircleLongAfterTheBlankIsStraightIsNotTheRig() {
        RodSeries rod = withARigThatStays(0.2);
        Curves curves = StrokeTrends.of(rod, 1 / FPS).curves();
        ReleaseFinder finder = new ReleaseFinder(rod, 1 / FPS);
        Found rig = finder.byRig(STROKE.release() - 0.05, STROKE.release() + 0.35);
        assertThat(rig.value()).as("it does leave").isCloseTo(STROKE.release() + 0.2, within(0.05));
        // A rod that is dropped at once stops late too, and two clues stand against two.
        double fastest = STROKE.moments().get(EventKind.FASTEST_TURN);
        Found all = finder.find(fastest, STROKE.release() + 0.35, curves, STROKE.release() + 0.2);
        assertThat(all.value()).isCloseTo(STROKE.release(), within(2 * all.sd()));
        assertThat(all.sd()).isLessThan(0.03);
    }

    /** A rod that is dropped at once goes on turning after its stop; a slip of the trace in the fall is no loaded blank. */
    @Test
    void aBendThatSeemsToBeLongAfterTheStopDoesNotMoveTheRelease() {
        RodSeries rod = rod();
        Curves curves = StrokeTrends.of(rod, 1 / FPS).curves();
        Found plain = find(rod, curves);
        Found slipped = find(rod, slipping(curves, STROKE.release() + 0.25));
        assertThat(plain.value()).isCloseTo(STROKE.release(), within(2 * plain.sd()));
        assertThat(slipped.value()).isCloseTo(plain.value(), within(1e-3));
    }
}
