package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class TraceScoreTest {

    /** A straight level rod 100 px long, grip at 20 px from the butt; frame i lies i pixels lower. */
    private static TruthFrame truth(int i) {
        Point grip = new Point(120, 200 + i);
        Point tip = new Point(200, 200 + i);
        return new TruthFrame(
                i / 50.0,
                tip,
                i < 8,
                new Point(200, 240 + i),
                i < 6,
                i < 4,
                grip,
                new Polyline(List.of(new Point(100, 200 + i), tip)),
                new Polyline(List.of(grip, tip)),
                0,
                1,
                Homography.IDENTITY);
    }

    private static TruthClip clip() {
        List<TruthFrame> frames = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            frames.add(truth(i));
        }
        return new TruthClip("made up", 640, 480, frames, List.of());
    }

    /** The truth moved down by an error that differs from frame to frame. */
    private static Trace trace(double[] tipErrors, double sd) {
        List<FrameTrace> frames = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            TruthFrame t = truth(i);
            Point off = new Point(0, tipErrors[i]);
            Tracked tip = Double.isNaN(tipErrors[i])
                    ? Tracked.notSeen(null, "made up")
                    : Tracked.seen(t.tip().plus(off), sd);
            frames.add(new FrameTrace(
                    i,
                    i / 50.0,
                    Tracked.seen(t.grip(), 1),
                    tip,
                    Tracked.seen(new Point(203, 244 + i), 4.9),
                    Double.isNaN(tipErrors[i]) ? null : t.blank().map(p -> p.plus(off)),
                    0.01));
        }
        return new Trace(
                640, 480, frames, new CameraMotion(Collections.nCopies(10, Homography.IDENTITY), 0, true), 80, 1, null);
    }

    private static TraceScore score(double sd) {
        double[] errors = {1, 1, 1, 3, 3, 30, Double.NaN, 5, 2, Double.NaN};
        return TraceScore.of(trace(errors, sd), clip());
    }

    @Test
    void countsTheTipOnlyWhereItIsInViewAndSeen() {
        TraceScore s = score(3.5);
        assertThat(s.tip().count()).isEqualTo(7);
        assertThat(s.tip().median()).isEqualTo(3);
        assertThat(s.tipSeen()).isEqualTo(new Tally(7, 8));
        assertThat(s.tipLostOrWrong()).isEqualTo(new Tally(2, 8));
        assertThat(s.tipWrongAmongSeen()).isEqualTo(new Tally(1, 7));
        assertThat(s.tipInvented()).isEqualTo(new Tally(1, 2));
    }

    @Test
    void calibrationFollowsTheStatedRadius() {
        assertThat(score(3.5).tipWithinSd()).isEqualTo(new Tally(5, 7));
        assertThat(score(0.5).tipWithinSd()).isEqualTo(new Tally(0, 7));
    }

    @Test
    void rigErrorIsTakenBeforeTheReleaseOnly() {
        TraceScore s = score(1);
        assertThat(s.rig().count()).isEqualTo(4);
        assertThat(s.rig().median()).isEqualTo(5, within(1e-12));
        assertThat(s.rigSeen()).isEqualTo(new Tally(6, 6));
        assertThat(s.rigWithinSd()).isEqualTo(new Tally(0, 6));
        assertThat(s.rigInvented()).as("the clip has ten frames").isEqualTo(new Tally(4, 4));
    }

    @Test
    void blankShiftedSidewaysLiesThatFarOff() {
        assertThat(score(1).frames().get(3).blankDistance()).isEqualTo(3, within(1e-9));
        assertThat(score(1).frames().get(0).buttErrorDeg()).isEqualTo(0, within(1e-9));
        assertThat(score(1).compression().p95()).isEqualTo(0, within(1e-12));
    }

    @Test
    void aStillCameraTakenForStillHasNoError() {
        assertThat(score(1).camera().p95()).isEqualTo(0, within(1e-12));
    }

    @Test
    void aClipThatDoesNotBelongToTheTruthIsRefused() {
        assertThatThrownBy(() -> clip().at(3.0)).hasMessageContaining("no frame at 3.0 s");
    }

    @Test
    void quantilesInterpolate() {
        Spread s = new Spread(new double[] {4, 1, 2, 3, Double.NaN});
        assertThat(s.count()).isEqualTo(4);
        assertThat(s.median()).isEqualTo(2.5);
        assertThat(s.shareAbove(2)).isEqualTo(0.5);
    }
}
