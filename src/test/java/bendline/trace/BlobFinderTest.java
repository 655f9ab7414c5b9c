package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.List;
import org.junit.jupiter.api.Test;

class BlobFinderTest {

    private static final int WIDTH = 400;
    private static final int HEIGHT = 300;
    private static final Point TIP = new Point(300, 60);
    private static final Fit ROD = new Fit(new Polyline(List.of(new Point(80, 280), TIP)), 0.5, 1, 0.01, 3, 100, 1, 0);

    private static Plane plane(int lineTo, int rigTop, int rigBottom) {
        float[] values = new float[WIDTH * HEIGHT];
        for (int y = 70; y < lineTo; y++) {
            values[y * WIDTH + 300] = 12;
            values[y * WIDTH + 301] = 12;
        }
        for (int y = rigTop; y < rigBottom; y++) {
            for (int x = 297; x < 305; x++) {
                values[y * WIDTH + x] = 20;
            }
        }
        return new Plane(WIDTH, HEIGHT, values);
    }

    private static Point strongest(Plane plane) {
        List<Blob> blobs = new BlobFinder(320).find(plane, ROD);
        assertThat(blobs).isNotEmpty();
        return blobs.get(0).centre();
    }

    @Test
    void theRigIsTheThickEndOfItsLine() {
        assertThat(strongest(plane(150, 150, 162)).distance(new Point(301, 156)))
                .isLessThan(1);
    }

    @Test
    void whereOnlyTheLineShowsTheRigIsAtItsOuterEnd() {
        assertThat(strongest(plane(150, 0, 0)).distance(new Point(301, 148))).isLessThan(2);
    }

    @Test
    void aRigByItselfIsWhereItsMiddleIs() {
        assertThat(strongest(plane(70, 150, 162)).distance(new Point(301, 156))).isLessThan(0.1);
    }

    @Test
    void whereALineTurnsItIsNotTheRig() {
        float[] values = new float[WIDTH * HEIGHT];
        for (int i = 0; i <= 40; i++) {
            box(values, 300 + i, 100 + i, 2, 2);
            box(values, 340 + i, 140 - i, 2, 2);
        }
        box(values, 338, 138, 5, 5);
        box(values, 378, 98, 8, 8);
        Point rig = strongest(new Plane(WIDTH, HEIGHT, values));
        assertThat(rig.distance(new Point(382, 102))).isLessThan(3);
    }

    private static void box(float[] values, int left, int top, int width, int height) {
        for (int y = top; y < top + height; y++) {
            for (int x = left; x < left + width; x++) {
                values[y * WIDTH + x] = 12;
            }
        }
    }
}
