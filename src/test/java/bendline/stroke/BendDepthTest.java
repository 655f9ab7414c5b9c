package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

class BendDepthTest {

    private static final double LENGTH_PX = 400;

    /** A rod that turns about its hand without bending, square to the phone. */
    private static Trace turning() {
        List<FrameTrace> frames = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            Point hand = new Point(960, 700);
            Point tip = hand.plus(Point.direction(-Math.toRadians(30 + 2 * i)).times(LENGTH_PX));
            frames.add(new FrameTrace(
                    i,
                    i / 60.0,
                    Tracked.seen(hand, 1),
                    Tracked.seen(tip, 1),
                    Tracked.notSeen(null, "no rig"),
                    new Polyline(List.of(hand, tip)),
                    0.002));
        }
        CameraMotion still = new CameraMotion(Collections.nCopies(60, bendline.geometry.Homography.IDENTITY), 0, true);
        return new Trace(1920, 1080, frames, still, LENGTH_PX, 1, null);
    }

    /** What a length is off by beyond the usual 1.2 %: √(0.05² − 0.012²) of a rod of 3 m is 0.1456 m (Pythagoras). */
    @Test
    void tellsATipThatIsAnotherThingsFromTheLength() {
        CastPlane plane = CastPlane.of(turning()).inMetres(3);
        Point hand = new Point(960, 700);
        Polyline rod = new Polyline(List.of(hand, hand.plus(new Point(0, -LENGTH_PX))));
        Polyline longer = new Polyline(List.of(hand, hand.plus(new Point(0, -1.05 * LENGTH_PX))));
        assertThat(plane.misplaced(rod, 3)).isZero();
        assertThat(plane.misplaced(longer, 3)).isEqualTo(0.1456, within(0.01));
    }

    /** Two sides of a square: the way is 2, the straight 1.4142. */
    @Test
    void measuresCompressionFromEndToEnd() {
        Polyline corner = new Polyline(List.of(new Point(0, 0), new Point(1, 0), new Point(1, 1)));
        assertThat(BendDepth.compression(corner)).isEqualTo(1 - Math.sqrt(2) / 2, within(1e-12));
    }
}
