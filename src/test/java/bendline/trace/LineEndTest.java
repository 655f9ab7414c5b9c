package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LineEndTest {

    private static final int WIDTH = 320;
    private static final int HEIGHT = 120;

    /** A level dark line from x = 40, thinning towards its end, in noise. */
    private static LineSearch picture(double end) {
        Random random = new Random(5);
        float[] v = new float[WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double across = y + 0.5 - 60.5;
                double inside = x > 40 && x < end ? 1 - 0.6 * (x - 40) / (end - 40) : 0;
                v[y * WIDTH + x] = (float) (-4 * inside * Math.exp(-across * across / 2) + 0.3 * random.nextGaussian());
            }
        }
        return new LineSearch(new Plane(WIDTH, HEIGHT, v), -1);
    }

    private static Polyline to(double x) {
        return new Polyline(List.of(new Point(40, 60.5), new Point(140, 60.5), new Point(x, 60.5)));
    }

    @Test
    void aThinEndIsFoundInsideAndBeyondWhereItWasThoughtToBe() {
        assertThat(LineEnd.of(picture(250), to(258), 15, 5).beyondPx()).isEqualTo(-8, offset(2.5));
        assertThat(LineEnd.of(picture(250), to(242), 15, 5).beyondPx()).isEqualTo(8, offset(2.5));
    }

    @Test
    void outOfThePictureNothingIsLearnt() {
        LineEnd end = LineEnd.of(picture(400), to(335), 15, 4);
        assertThat(end.beyondPx()).isEqualTo(0, offset(1.5));
        assertThat(end.sdPx()).isEqualTo(4, offset(1.5));
    }

    @Test
    void whatIsKnownBeforeCounts() {
        double free = LineEnd.of(picture(250), to(262), 15, 8).beyondPx();
        double held = LineEnd.of(picture(250), to(262), 15, 0.5).beyondPx();
        assertThat(Math.abs(held)).isLessThan(Math.abs(free));
    }

    @Test
    void aLineIsMovedAsAWholeOrReachesFarther() {
        LineEnd end = new LineEnd(7, 1);
        assertThat(end.moved(to(240)).last().x()).isEqualTo(247, offset(0.01));
        assertThat(end.moved(to(240)).first().x()).isEqualTo(47, offset(0.01));
        assertThat(end.reached(to(240)).first().x()).isEqualTo(40, offset(0.01));
        assertThat(end.reached(to(240)).last().x()).isEqualTo(247, offset(0.01));
        assertThat(end.within(3).beyondPx()).isEqualTo(3);
        assertThat(end.within(3).sdPx()).isGreaterThan(4);
    }
}
