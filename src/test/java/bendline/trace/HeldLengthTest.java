package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A rod of 450 px from hand to tip, whose handle shows for another 60 px. */
class HeldLengthTest {

    private static final double FREE = 450;
    private static final double HANDLE = 60;
    private static final int FRAMES = 60;

    private static Point up(int t) {
        return Point.direction(-Math.toRadians(60 + t));
    }

    private static Point hand(int t) {
        return new Point(900 + t, 700);
    }

    private static Trace trace(boolean tipSeen) {
        List<FrameTrace> frames = new ArrayList<>();
        for (int t = 0; t < FRAMES; t++) {
            Polyline blank = new Polyline(List.of(hand(t).minus(up(t).times(HANDLE)), hand(t).plus(up(t).times(FREE))))
                    .resampled(25);
            Tracked tip = tipSeen ? Tracked.seen(blank.last(), 1) : Tracked.notSeen(blank.last(), "hidden");
            frames.add(new FrameTrace(
                    t, t / 60.0, Tracked.seen(blank.first(), 10), tip, Tracked.notSeen(null, ""), blank, 0.01));
        }
        return new Trace(1920, 1080, frames, new CameraMotion(List.of(), 0, true), FREE + HANDLE, 15, null);
    }

    private static List<Grasp> grasps(Point off) {
        Random random = new Random(3);
        List<Grasp> out = new ArrayList<>();
        for (int t = 0; t < FRAMES; t++) {
            Point noise = new Point(6 * random.nextGaussian(), 6 * random.nextGaussian());
            out.add(new Grasp(t, hand(t).plus(off).plus(noise), 5));
        }
        return out;
    }

    @Test
    void theRodBeginsAtTheFist() {
        RodLength.Estimate length = Objects.requireNonNull(HeldLength.of(trace(true), grasps(new Point(0, 0))));
        assertThat(length.along(trace(true).frames().get(30).blank())).isCloseTo(FREE, within(0.015 * FREE));
        assertThat(length.freeSdPx()).isBetween(5.0, 10.0);
    }

    @Test
    void handsThatAreElsewhereTellNothing() {
        assertThat(HeldLength.of(trace(true), grasps(new Point(0, 250)))).isNull();
    }

    @Test
    void withoutTipsNothingIsTold() {
        assertThat(HeldLength.of(trace(false), grasps(new Point(0, 0)))).isNull();
    }
}
