package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;

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

class LaunchTest {

    private static final double LENGTH_PX = 400;

    /** A straight rod that turns about its hand. */
    private static Trace turning(int count, double lengthSdPx) {
        List<FrameTrace> frames = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Point hand = new Point(960, 700);
            Point tip = hand.plus(Point.direction(-Math.toRadians(30 + 2 * i)).times(LENGTH_PX));
            Polyline blank = new Polyline(List.of(hand, tip));
            Tracked rig = Tracked.notSeen(null, "no rig");
            frames.add(new FrameTrace(i, i / 60.0, Tracked.seen(hand, 1), Tracked.seen(tip, 1), rig, blank, 0.002));
        }
        CameraMotion still = new CameraMotion(Collections.nCopies(count, Homography.IDENTITY), 0, true);
        return new Trace(1920, 1080, frames, still, LENGTH_PX, lengthSdPx, null);
    }

    private static double viewSd(Trace trace) {
        return Launch.viewSd(CastPlane.of(trace), trace);
    }

    @Test
    void aViewIsNoBetterKnownThanTheLengthThatTellsIt() {
        double known = viewSd(turning(60, 0.01 * LENGTH_PX));
        double doubted = viewSd(turning(60, 0.03 * LENGTH_PX));
        assertThat(known).isLessThan(0.03);
        assertThat(doubted).isEqualTo(0.03);
        assertThat(viewSd(turning(60, 0.09 * LENGTH_PX))).isGreaterThan(doubted).isLessThan(0.09);
    }

    @Test
    void aRodInAFewFramesTellsNoView() {
        assertThat(viewSd(turning(8, 0.01 * LENGTH_PX))).isEqualTo(viewSd(turning(60, 0.09 * LENGTH_PX)));
    }
}
