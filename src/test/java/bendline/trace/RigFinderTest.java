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
import org.junit.jupiter.api.Test;

/** A rod that stands still with its rig hanging from the tip; places are where they were drawn, in noise of one unit. */
class RigFinderTest {

    private static final int WIDTH = 500;
    private static final int HEIGHT = 500;
    private static final double ROD_PX = 320;
    private static final int DROP_PX = 100;
    private static final Point TIP = new Point(300, 60);
    private static final Fit ROD = new Fit(new Polyline(List.of(new Point(80, 280), TIP)), 0.5, 1, 0.01, 3, 100, 1, 0);
    private static final int FRAMES = 20;

    private final Random random = new Random(5);

    private float[] noise() {
        float[] out = new float[WIDTH * HEIGHT];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) random.nextGaussian();
        }
        return out;
    }

    private static void box(float[] values, int x, int y, int halfWidth, int halfHeight, float strength) {
        for (int row = y - halfHeight; row < y + halfHeight; row++) {
            for (int column = x - halfWidth; column < x + halfWidth; column++) {
                values[row * WIDTH + column] = strength;
            }
        }
    }

    private interface Scene {
        void draw(float[] values, int frame);
    }

    private List<Tracked> followed(double dropShare, Scene scene) {
        RigFinder rigs = new RigFinder(ROD_PX, dropShare);
        List<Look> looks = new ArrayList<>();
        for (int t = 0; t < FRAMES; t++) {
            float[] values = noise();
            scene.draw(values, t);
            rigs.add(rigs.things(new Plane(WIDTH, HEIGHT, values), ROD));
            looks.add(new Look(t / 60.0, List.of(), ROD));
        }
        return rigs.choose(
                looks, Map.of(), new RigAgain((t, a) -> Plane.zeros(a.width(), a.height()), WIDTH, HEIGHT, ROD_PX));
    }

    private static double off(Tracked rig, double dropPx) {
        return rig.position().distance(new Point(TIP.x(), TIP.y() + dropPx));
    }

    /** The line from tip to rig with gaps, so that it falls into pieces. */
    private static void line(float[] values, int frame) {
        for (int y = 70; y < 60 + DROP_PX - 6; y++) {
            if ((y + frame) % 20 > 2) {
                box(values, 300, y, 1, 1, 9);
            }
        }
    }

    @Test
    void piecesOfTheLineAreNotTheRig() {
        List<Tracked> rigs = followed(Double.NaN, (values, t) -> {
            line(values, t);
            if (t % 3 > 0) {
                box(values, 300, 60 + DROP_PX, 4, 6, -12);
            }
        });
        assertThat(rigs).allSatisfy(r -> {
            assertThat(r.seen()).isTrue();
            // Where the rig does not show its line's last piece is taken: half a rig and half a piece short of its
            // middle.
            assertThat(off(r, DROP_PX)).isLessThan(15);
            assertThat(off(r, DROP_PX)).isLessThan(3 * r.sdPx());
        });
    }

    @Test
    void aToldDropTellsTheRigFromWhatHangsFartherOff() {
        Scene two = (values, t) -> {
            box(values, 300, 60 + 170, 4, 6, 14);
            if (t % 4 > 0) {
                box(values, 300, 60 + DROP_PX, 4, 6, 14);
            }
        };
        Tracked untold = followed(Double.NaN, two).get(FRAMES - 1);
        Tracked told = followed(DROP_PX / ROD_PX, two).get(FRAMES - 1);
        assertThat(off(untold, 170)).as("most often seen").isLessThan(3);
        assertThat(off(told, DROP_PX)).as("told").isLessThan(3);
    }

    @Test
    void aFaintRigIsKnownLessWell() {
        Tracked plain = followed(Double.NaN, (v, t) -> box(v, 300, 60 + DROP_PX, 4, 6, 20))
                .get(5);
        Tracked faint = followed(Double.NaN, (v, t) -> box(v, 300, 60 + DROP_PX, t == 5 ? 1 : 4, t == 5 ? 3 : 6, 9))
                .get(5);
        assertThat(faint.sdPx()).isGreaterThan(2 * plain.sdPx());
    }
}
