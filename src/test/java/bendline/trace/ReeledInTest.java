package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * A rod of 400 px that is held still at sixty frames a second, its tip at (300, 100), while a rig is reeled in to its drop of 120 px, and
 * seen there from frame 90 on, among the swaying heads of reeds. Rods of 4 m and reels that take in a metre a second: common practice, no
 * source.
 */
class ReeledInTest {

    private static final double ROD_PX = 400;
    private static final double DROP_PX = 120;
    private static final double STEP = 1 / 60.0;
    private static final int FRAMES = 120;
    private static final int UP = 90;
    private static final Point TIP = new Point(300, 100);

    private static final Fit ROD =
            new Fit(new Polyline(List.of(new Point(0, 364), TIP)), 0.3, 0.3, 0.01, 3, 1000, 1, 0);

    private static final List<Look> LOOKS = IntStream.range(0, FRAMES)
            .mapToObj(t -> new Look(t * STEP, List.of(ROD), ROD))
            .toList();

    /** Reeled in at so many rod lengths a second, swinging by 30 px with a period of two seconds. */
    private static Point rig(int t, double pace) {
        double far = DROP_PX + Math.max(0, UP - t) * STEP * pace * ROD_PX;
        return TIP.plus(new Point(30 * Math.sin(Math.PI * t * STEP), far));
    }

    private static Blob thing(Point at) {
        return new Blob(at, 300, 12, 6);
    }

    /** Two reeds, one right where the rig comes up to, and what shows of the rig. */
    private static List<List<Blob>> blobs(double pace, IntPredicate shows) {
        List<List<Blob>> out = new ArrayList<>();
        for (int t = 0; t < FRAMES; t++) {
            double sway = 6 * Math.sin(5 * t * STEP);
            List<Blob> now = new ArrayList<>(List.of(
                    thing(TIP.plus(new Point(sway + 25, DROP_PX + 20))),
                    thing(TIP.plus(new Point(-40 + sway, DROP_PX + 70)))));
            if (shows.test(t)) {
                now.add(thing(rig(t, pace)));
            }
            out.add(now);
        }
        return out;
    }

    private static Map<Integer, Blob> found(double pace, IntPredicate shows) {
        List<Tracked> places = IntStream.range(0, FRAMES)
                .mapToObj(t -> t < UP ? Tracked.notSeen(null, "farther out") : Tracked.seen(rig(t, pace), 1))
                .toList();
        return new ReeledIn(blobs(pace, shows), LOOKS, ROD_PX, DROP_PX).before(places);
    }

    private static long right(Map<Integer, Blob> found, double pace) {
        return found.entrySet().stream()
                .filter(e -> e.getValue().centre().distance(rig(e.getKey(), pace)) < 1e-9)
                .count();
    }

    @Test
    void aRigThatComesUpIsFollowedBackDown() {
        for (double pace : new double[] {0.15, 0.25, 0.4, 0.6}) {
            Map<Integer, Blob> found = found(pace, t -> true);
            assertThat(right(found, pace)).as("at " + pace).isGreaterThan(80);
            assertThat(found).hasSizeLessThan((int) right(found, pace) + 3);
        }
    }

    @Test
    void itIsFollowedThroughATimeInWhichItIsHidden() {
        Map<Integer, Blob> found = found(0.25, t -> t < 60 || t > 70);
        assertThat(right(found, 0.25)).isGreaterThan(70);
        assertThat(found).hasSizeLessThan((int) right(found, 0.25) + 3);
    }

    @Test
    void aReedThatSwaysBelowTheTipIsNoRig() {
        assertThat(found(0.25, t -> false)).isEmpty();
    }

    @Test
    void aFifthOfASecondIsTooShortToBelieve() {
        assertThat(found(0.4, t -> t >= UP - 12)).isEmpty();
        assertThat(found(0.4, t -> t >= UP - 30)).isNotEmpty();
    }

    @Test
    void whatShowsInEveryThirdFrameOnlyIsNotBelieved() {
        assertThat(found(0.25, t -> t % 3 == 0)).isEmpty();
        assertThat(found(0.25, t -> t % 3 != 0)).isNotEmpty();
    }

    @Test
    void whatStaysAtTheDropIsNotReeledIn() {
        assertThat(found(0, t -> true)).isEmpty();
    }

    @Test
    void withoutADropNothingIsLookedFor() {
        List<Tracked> places = IntStream.range(0, FRAMES)
                .mapToObj(t -> t < UP ? Tracked.notSeen(null, "farther out") : Tracked.seen(rig(t, 0.25), 1))
                .toList();
        assertThat(new ReeledIn(blobs(0.25, t -> true), LOOKS, ROD_PX, Double.NaN).before(places))
                .isEmpty();
    }
}
