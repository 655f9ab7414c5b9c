package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A rig that swings below a rod of 320 px at sixty frames a second and is missed in some frames before trees of nearly its colour. */
class RigAgainTest {

    private static final int WIDTH = 320;
    private static final int HEIGHT = 240;
    private static final double ROD_PX = 320;
    private static final double STEP = 1 / 60.0;
    private static final int FRAMES = 40;
    private static final float SHOWS = 4;

    private static final Fit ROD =
            new Fit(new Polyline(List.of(new Point(0, 200), new Point(160, 20))), 0.3, 0.3, 0.01, 3, 1000, 1, 0);

    private static Point rig(int t) {
        return new Point(190 + 40 * Math.sin(2 * t * STEP), 120);
    }

    private interface Scene {
        void draw(float[] values, int t);
    }

    /** 5 by 11 pixels about a place. */
    private static void thing(float[] values, Point at, float strength) {
        for (int row = (int) at.y() - 5; row <= (int) at.y() + 5; row++) {
            for (int column = (int) at.x() - 2; column <= (int) at.x() + 2; column++) {
                values[row * WIDTH + column] = strength;
            }
        }
    }

    private static Map<Integer, Blob> found(IntPredicate seen, Scene scene) {
        return found(ROD, seen, scene);
    }

    private static Map<Integer, Blob> found(Fit rod, IntPredicate seen, Scene scene) {
        List<Look> looks = IntStream.range(0, FRAMES)
                .mapToObj(t -> new Look(t * STEP, List.of(rod), rod))
                .toList();
        List<Tracked> rigs = IntStream.range(0, FRAMES)
                .mapToObj(t -> seen.test(t) ? Tracked.seen(rig(t), 0.5) : Tracked.notSeen(null, "faint"))
                .toList();
        RigAgain.Parts parts = (t, area) -> {
            Random random = new Random(t);
            float[] values = new float[WIDTH * HEIGHT];
            for (int i = 0; i < values.length; i++) {
                values[i] = (float) (0.6 * random.nextGaussian());
            }
            scene.draw(values, t);
            return new Plane(WIDTH, HEIGHT, values).cut(area);
        };
        return new RigAgain(parts, WIDTH, HEIGHT, ROD_PX).found(rigs, looks);
    }

    @Test
    void whatShowsFaintlyWhereItHasToBeIsTheRig() {
        Map<Integer, Blob> found = found(t -> t % 4 != 3 && (t < 20 || t > 21), (v, t) -> thing(v, rig(t), SHOWS));
        assertThat(found).containsOnlyKeys(3, 7, 11, 15, 19, 20, 21, 23, 27, 31, 35);
        found.forEach((t, b) -> assertThat(b.centre().distance(rig(t))).isLessThan(1.2));
    }

    @Test
    void withoutAnythingThereItStaysUnseen() {
        assertThat(found(t -> t % 4 != 3, (v, t) -> {})).isEmpty();
    }

    @Test
    void whatLiesElsewhereIsNotTheRig() {
        assertThat(found(t -> t % 4 != 3, (v, t) -> thing(v, rig(t).plus(new Point(16, 0)), 12)))
                .isEmpty();
    }

    @Test
    void amongManyThingsItCannotBeTold() {
        List<Point> places = new ArrayList<>();
        for (int k = 0; k < 8; k++) {
            places.add(new Point(18 * Math.cos(k * Math.PI / 4), 18 * Math.sin(k * Math.PI / 4)));
        }
        assertThat(found(t -> t % 4 != 3, (v, t) -> {
                    for (Point p : places) {
                        Point at = rig(t).plus(p);
                        v[(int) at.y() * WIDTH + (int) at.x()] = 9;
                        v[(int) at.y() * WIDTH + (int) at.x() + 1] = 9;
                        v[((int) at.y() + 1) * WIDTH + (int) at.x()] = 9;
                        v[((int) at.y() + 1) * WIDTH + (int) at.x() + 1] = 9;
                    }
                    thing(v, rig(t), SHOWS);
                }))
                .isEmpty();
    }

    @Test
    void besideTheBlankItMayBeAPieceOfThat() {
        Fit across = ROD.onLine(new Polyline(List.of(new Point(0, 140), new Point(300, 110))));
        assertThat(found(across, t -> t % 4 != 3, (v, t) -> thing(v, rig(t), SHOWS)))
                .isEmpty();
    }

    @Test
    void whereNothingForetellsItNothingIsLookedFor() {
        assertThat(found(t -> t < 15 || t > 30, (v, t) -> thing(v, rig(t), SHOWS)))
                .isEmpty();
    }
}
