package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A rig at sixty frames a second that is pulled as hard as the physics of a cast allows, on a rod of 400 px. */
class RigRunsTest {

    private static final double ROD_PX = 400;
    private static final double STEP = 1 / 60.0;
    private static final int FRAMES = 60;

    /** Rests, and is pulled from frame 20 on with 40 rod lengths a second squared, half of what is allowed. */
    private static Point rig(int t) {
        double s = Math.max(0, t - 20) * STEP;
        return new Point(100 + 0.5 * 40 * ROD_PX * s * s, 300);
    }

    private static @Nullable Point[] path(IntPredicate seen) {
        return IntStream.range(0, FRAMES)
                .mapToObj(t -> seen.test(t) ? rig(t) : null)
                .toArray(Point[]::new);
    }

    private static @Nullable Point[] kept(@Nullable Point[] path) {
        List<Tracked> places = Arrays.stream(path)
                .map(p -> p == null ? Tracked.notSeen(null, "hidden") : Tracked.seen(p, 1))
                .toList();
        List<Look> looks = IntStream.range(0, FRAMES)
                .mapToObj(t -> new Look(t * STEP, List.of(), null))
                .toList();
        return RigRuns.consistent(places, looks, ROD_PX).stream()
                .map(r -> r.seen() ? r.position() : null)
                .toArray(Point[]::new);
    }

    private static long seen(@Nullable Point[] path) {
        return Arrays.stream(path).filter(Objects::nonNull).count();
    }

    @Test
    void aRigThatIsPulledHardStaysWholeAcrossGaps() {
        Point[] path = path(t -> t % 9 != 0 && (t < 30 || t > 34));
        assertThat(kept(path)).isEqualTo(path);
    }

    @Test
    void anotherThingAfterAShortGapIsNotTheRig() {
        Point[] path = path(t -> t < 40 || t > 46);
        for (int t = 41; t < 45; t++) {
            path[t] = new Point(rig(t).x() - 150 + 5 * t, 150);
        }
        Point[] kept = kept(path);
        assertThat(Arrays.copyOfRange(kept, 40, 47)).containsOnlyNulls();
        assertThat(seen(kept)).isEqualTo(FRAMES - 7);
    }

    @Test
    void aLeapWithoutAGapIsFoundToo() {
        Point[] path = path(t -> true);
        for (int t = 30; t < 34; t++) {
            path[t] = rig(t).plus(new Point(0, 200));
        }
        Point[] kept = kept(path);
        assertThat(Arrays.copyOfRange(kept, 30, 34)).containsOnlyNulls();
        assertThat(seen(kept)).isEqualTo(FRAMES - 4);
    }

    @Test
    void afterALongGapItMayBeAnywhereThatItCanHaveGotTo() {
        Point[] path = path(t -> t < 15);
        for (int t = 45; t < 60; t++) {
            path[t] = new Point(400, 100 + t);
        }
        assertThat(seen(kept(path))).isEqualTo(30);
    }

    @Test
    void aSinglePlaceThatNobodyForetellsIsDropped() {
        Point[] path = path(t -> t < 20 || t > 24);
        path[22] = new Point(100, 100);
        Point[] kept = kept(path);
        assertThat(kept[22]).isNull();
        assertThat(seen(kept)).isEqualTo(FRAMES - 5);
    }
}
