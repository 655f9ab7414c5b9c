package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What is a cast and what is not. */
class CastFinderTest {

    private static final double FPS = 60;

    private static List<Stroke> strokes(Trace trace) {
        return new StrokeTimer().time(trace, Setup.NONE, new SlowMotion(1, "as filmed"));
    }

    private static Trace moving(double seconds, DoubleUnaryOperator angle, DoubleUnaryOperator tipTurn) {
        return moving(seconds, angle, tipTurn, seconds);
    }

    private static Trace moving(double seconds, DoubleUnaryOperator angle, DoubleUnaryOperator tipTurn, double gone) {
        return new MovingRod(angle, tipTurn, gone).trace(FPS, seconds);
    }

    private static double move(double t, double from, double seconds) {
        return AnalyticStroke.step((t - from) / seconds);
    }

    @Test
    void aRodLiftedAndPutDownIsNoCast() {
        assertThat(strokes(
                        moving(6, t -> 10 + 80 * move(t, 1, 1.2) - 80 * move(t, 3.5, 1.0), t -> 6 * move(t, 1, 0.3))))
                .isEmpty();
    }

    @Test
    void aBackswingPutDownAgainIsNoCast() {
        assertThat(strokes(moving(7, t -> 58 + 84 * move(t, 0.5, 1.8) - 84 * move(t, 4, 1.6), t -> 0)))
                .isEmpty();
    }

    @Test
    void aBackswingThatIsTheEndOfTheClipIsNoCast() {
        assertThat(strokes(moving(3, t -> 58 + 84 * move(t, 0.5, 0.8), t -> 8 * move(t, 0.5, 0.4))))
                .isEmpty();
    }

    @Test
    void aRodAtRestIsNoCast() {
        assertThat(strokes(moving(5, t -> 62, t -> 1.5 * Math.sin(9 * t)))).isEmpty();
    }

    @Test
    void walkingAboutWithARodIsNoCast() {
        assertThat(strokes(moving(6, t -> 75 + 9 * Math.sin(5.5 * t), t -> 5 * Math.sin(11 * t))))
                .isEmpty();
    }

    @Test
    void aFishBeingPlayedIsNoCast() {
        assertThat(strokes(moving(8, t -> 62 + 24 * Math.sin(2.6 * t), t -> -65 + 15 * Math.sin(7 * t))))
                .isEmpty();
    }

    @Test
    void aStrikeIsNoCast() {
        assertThat(strokes(moving(5, t -> 25 + 75 * move(t, 2, 0.25), t -> -60 * move(t, 2, 0.25))))
                .isEmpty();
    }

    @Test
    void aStiffStickSwungRoundIsNoCast() {
        assertThat(strokes(moving(4, t -> -60 + 250 * move(t, 0.5, 0.8) - 290 * move(t, 1.5, 0.35), t -> 0)))
                .isEmpty();
    }

    @Test
    void aSwingWhoseRigStaysOnTheDropIsNoCast() {
        assertThat(strokes(moving(
                        5,
                        t -> 58 + 84 * move(t, 0.5, 1.2) - 80 * move(t, 2.2, 0.4),
                        t -> 60 * move(t, 2.2, 0.2) - 60 * move(t, 2.4, 0.2))))
                .isEmpty();
    }

    /** The same turn with the line let go at its end, and with something that keeps the rod bent. */
    @Test
    void aTurnAfterWhichTheRodStaysBentIsNoCast() {
        DoubleUnaryOperator turn = t -> 58 + 84 * move(t, 0.5, 1.2) - 80 * move(t, 2.2, 0.4);
        DoubleUnaryOperator bend = t -> 110 * move(t, 2.2, 0.2);
        assertThat(strokes(moving(5, turn, t -> bend.applyAsDouble(t) - 110 * move(t, 2.42, 0.1), 2.45)))
                .hasSize(1);
        assertThat(strokes(moving(5, turn, bend, 2.45))).isEmpty();
    }

    /** What is thrown counts where the rod hardly bends: the rig taken along, then gone from its drop. */
    @Test
    void aRodThatHardlyBendsCastsWhereItLetsItsRigGo() {
        DoubleUnaryOperator turn = t -> 58 + 84 * move(t, 0.5, 1.2) - 80 * move(t, 2.2, 0.4);
        assertThat(strokes(moving(5, turn, t -> 0, 2.55))).hasSize(1);
        assertThat(strokes(moving(5, turn, t -> 0))).isEmpty();
        assertThat(strokes(told(moving(5, turn, t -> 0, 2.55), 0.7))).isEmpty();
    }

    /**
     * A bend whose compression stands two uncertainties clear of none is itself four clear of it, compression being its square. One
     * three times smaller is not.
     */
    @Test
    void aVagueTipLeavesTheBendOfItsCurveClear() {
        DoubleUnaryOperator turn = t -> 58 + 84 * move(t, 0.5, 1.2) - 80 * move(t, 2.2, 0.4);
        DoubleUnaryOperator once = t -> move(t, 2.2, 0.2) - move(t, 2.4, 0.2);
        double vaguePx = 12;
        assertThat(strokes(told(moving(5, turn, t -> 50 * once.applyAsDouble(t)), vaguePx)))
                .hasSize(1);
        assertThat(strokes(told(moving(5, turn, t -> 17 * once.applyAsDouble(t)), vaguePx)))
                .isEmpty();
    }

    /** Seen in a mirror a quick backswing goes over the top too; the push that follows it tells which way the cast went. */
    @Test
    void aBackswingIsNoCastToTheOtherSide() {
        DoubleUnaryOperator back = t -> 58 + 84 * move(t, 0.8, 0.6);
        DoubleUnaryOperator bend = t -> -70 * (move(t, 0.8, 0.3) - move(t, 1.1, 0.3));
        DoubleUnaryOperator push = t -> 80 * move(t, 1.9, 0.35);
        assertThat(strokes(told(moving(4, back, bend), 0.7))).hasSize(1);
        assertThat(strokes(told(moving(4, t -> back.applyAsDouble(t) - push.applyAsDouble(t), bend), 0.7)))
                .isEmpty();
    }

    /** Where the rod slips to and fro in the trace before its push, faster than that, the push tells all the same. */
    @Test
    void aSlipAfterABackswingDoesNotHideItsPush() {
        DoubleUnaryOperator slip = t -> -29 * (move(t, 1.45, 0.1) - move(t, 1.62, 0.1));
        DoubleUnaryOperator back = t -> 58 + 84 * move(t, 0.8, 0.6) + slip.applyAsDouble(t);
        DoubleUnaryOperator bend = t -> -70 * (move(t, 0.8, 0.3) - move(t, 1.1, 0.3));
        DoubleUnaryOperator push = t -> back.applyAsDouble(t) - 80 * move(t, 1.9, 0.4);
        assertThat(strokes(told(new MovingRod(back, bend, 4).trace(240, 4), 0.7)))
                .hasSize(1);
        assertThat(strokes(told(new MovingRod(push, bend, 4).trace(240, 4), 0.7)))
                .isEmpty();
    }

    /** The same without its rig, each tip known to no better than so much, pixels. */
    private static Trace told(Trace trace, double tipSdPx) {
        List<FrameTrace> frames = trace.frames().stream()
                .map(f -> new FrameTrace(
                        f.frame(),
                        f.seconds(),
                        f.grip(),
                        Tracked.seen(f.tip().position(), tipSdPx),
                        Tracked.notSeen(null, "too small"),
                        f.blank(),
                        f.buttAngleSd()))
                .toList();
        return new Trace(1920, 1080, frames, trace.motion(), MovingRod.FREE_PX, 0.7, null);
    }

    @Test
    void aTurnThatStaysBehindTheUprightIsNoCast() {
        assertThat(strokes(moving(
                        4,
                        t -> 150 + 50 * move(t, 0.5, 0.8) - 45 * move(t, 1.8, 0.25),
                        t -> 50 * move(t, 1.8, 0.1) - 50 * move(t, 1.95, 0.1))))
                .isEmpty();
    }

    /** A cast of whose blank the outer fifth is lost while it turns. */
    private static Trace outerFifthLost(AnalyticStroke stroke, double from) {
        Trace whole = stroke.trace(FPS, 1, Side.RIGHT, 0.7, 0.03, 14);
        List<FrameTrace> frames = new ArrayList<>();
        for (FrameTrace f : whole.frames()) {
            boolean turns = f.seconds() > from && f.seconds() < stroke.release() + 0.15;
            frames.add(
                    turns && f.blank() != null
                            ? new FrameTrace(
                                    f.frame(),
                                    f.seconds(),
                                    f.grip(),
                                    Tracked.notSeen(f.tip().position(), "lost before the woods"),
                                    f.rig(),
                                    f.blank().cut(0.8 * f.blank().length()),
                                    f.buttAngleSd())
                            : f);
        }
        return new Trace(1920, 1080, frames, whole.motion(), MovingRod.FREE_PX, 0.7, null);
    }

    @Test
    void aCastIsToldFromWhatShowsOfABentBlankWithoutItsTip() {
        assertThat(strokes(outerFifthLost(AnalyticStroke.GOOD, AnalyticStroke.GOOD.turnStart() - 0.1)))
                .hasSize(1);
    }

    @Test
    void aBlankThatStaysStraightAsFarAsItShowsIsNoneThen() {
        AnalyticStroke stiff = AnalyticStroke.GOOD.withLoad(0, -0.1, 0);
        assertThat(strokes(outerFifthLost(stiff, stiff.turnStart() - 0.1))).isEmpty();
    }

    @Test
    void aRodSeenWholeInThreeFramesOnlyIsNotKnownWellEnoughToCast() {
        AnalyticStroke stroke = AnalyticStroke.GOOD;
        Trace hidden = outerFifthLost(stroke, 0);
        Trace whole = stroke.trace(FPS, 1, Side.RIGHT, 0.7, 0, 14);
        List<FrameTrace> frames = new ArrayList<>();
        int shown = 0;
        for (FrameTrace f : hidden.frames()) {
            boolean show = f.seconds() > stroke.turnStart() + 0.1 && shown < 3;
            shown += show ? 1 : 0;
            boolean after = f.seconds() > stroke.release();
            FrameTrace other = whole.frames().get(f.frame());
            frames.add(
                    show
                            ? other
                            : new FrameTrace(
                                    f.frame(),
                                    f.seconds(),
                                    f.grip(),
                                    Tracked.notSeen(null, "hidden"),
                                    f.rig(),
                                    after && other.blank() != null
                                            ? other.blank()
                                                    .cut(0.8 * other.blank().length())
                                            : f.blank(),
                                    f.buttAngleSd()));
        }
        assertThat(strokes(new Trace(1920, 1080, frames, whole.motion(), MovingRod.FREE_PX, 0.7, null)))
                .isEmpty();
    }

    @Test
    void aRodThatWasNotSeenWholeBeforeItsTurnIsNotToldByItsBend() {
        assertThat(strokes(outerFifthLost(AnalyticStroke.GOOD, 0))).isEmpty();
    }

    @Test
    void twoCastsAreFoundInOrder() {
        Trace first = AnalyticStroke.GOOD.trace(FPS, 1, Side.LEFT, 0.7, 0.03, 12);
        AnalyticStroke other = AnalyticStroke.GOOD.withBackswing(1.0, 0.5, 150).withFinish(60, 0, 0.3, 0.5);
        Trace second = other.trace(FPS, 1, Side.LEFT, 0.7, 0.03, 13);
        List<FrameTrace> frames = new ArrayList<>(first.frames());
        double later = frames.get(frames.size() - 1).seconds() + 1 / FPS;
        for (FrameTrace f : second.frames()) {
            frames.add(new FrameTrace(
                    frames.size(), f.seconds() + later, f.grip(), f.tip(), f.rig(), f.blank(), f.buttAngleSd()));
        }
        Trace both = new Trace(1920, 1080, frames, first.motion(), MovingRod.FREE_PX, 0.7, null);
        List<Stroke> strokes = strokes(both);
        assertThat(strokes).extracting(Stroke::number).containsExactly(1, 2);
        assertThat(strokes).extracting(Stroke::castsTo).containsOnly(Side.LEFT);
        Double release = strokes.get(0).event(EventKind.RELEASE).seconds();
        assertThat(release)
                .isNotNull()
                .isBetween(AnalyticStroke.GOOD.release() - 0.02, AnalyticStroke.GOOD.release() + 0.02);
        Double again = strokes.get(1).event(EventKind.RELEASE).seconds();
        assertThat(again).isNotNull().isBetween(later + other.release() - 0.02, later + other.release() + 0.02);
        assertThat(strokes.get(0).lastFrame()).isLessThan(strokes.get(1).firstFrame() + 60);
    }
}
