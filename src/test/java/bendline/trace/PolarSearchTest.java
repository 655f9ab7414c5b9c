package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A drawn picture of the difference from a background: a bent dark rod, and people about the one who holds it. */
class PolarSearchTest {

    private static final int WIDTH = 1200;
    private static final int HEIGHT = 1000;
    private static final Point HANDS = new Point(560, 600);

    /** Seven places along an arc from the hands over the top. */
    private static final List<Point> ROD = IntStream.rangeClosed(0, 6)
            .mapToObj(i -> HANDS.plus(new Point(i * (22 + 5.0 * i), -i * (72 - 5.5 * i))))
            .toList();

    /** A curve is only where fits begin, which look 14 px to either side. */
    private static final double TO_BE_FITTED_PX = 10;

    private final float[] values = new float[WIDTH * HEIGHT];

    PolarSearchTest() {
        Random random = new Random(5);
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) random.nextGaussian();
        }
    }

    @Test
    void findsABlankAmongNoise() {
        rod();

        assertThat(best(1)).isLessThan(TO_BE_FITTED_PX);
    }

    @Test
    void findsAClearBlankThoughThreePeopleWalkPastTheOneWhoHoldsIt() {
        rod();
        person(HANDS.x() - 90);
        person(HANDS.x() - 40);
        person(HANDS.x() + 110);

        assertThat(best(5)).isLessThan(TO_BE_FITTED_PX);
    }

    @Test
    void whereThereIsNothingWhatItFindsIsShort() {
        assertThat(curves(5)).allSatisfy(c -> assertThat(c.length()).isLessThan(100));
    }

    private void rod() {
        new Polyline(ROD).resampled(900).points().forEach(p -> square(p, 1, -15));
    }

    /** Head, body and two legs, as strong as the rod. */
    private void person(double x) {
        square(new Point(x, HANDS.y() - 40), 14, -15);
        for (double y = HANDS.y(); y < HANDS.y() + 100; y += 10) {
            square(new Point(x, y), 20, -15);
        }
        for (double s = 0; s < 140; s += 4) {
            square(new Point(x - 12 - 0.25 * s, HANDS.y() + 110 + s), 7, -15);
            square(new Point(x + 12 + 0.25 * s, HANDS.y() + 110 + s), 7, -15);
        }
    }

    private void square(Point middle, int half, float level) {
        for (int y = (int) middle.y() - half; y <= (int) middle.y() + half; y++) {
            for (int x = (int) middle.x() - half; x <= (int) middle.x() + half; x++) {
                values[y * WIDTH + x] = level;
            }
        }
    }

    private List<Polyline> curves(int count) {
        return new PolarSearch(0.055 * HEIGHT, 480)
                .find(new Plane(WIDTH, HEIGHT, values), HANDS, count).stream()
                        .map(PolarSearch.Candidate::curve)
                        .toList();
    }

    /** How far the outer part of the rod is at most from the nearest of the best curves, pixels. */
    private double best(int count) {
        return curves(count).stream()
                .mapToDouble(c ->
                        ROD.stream().skip(3).mapToDouble(c::distanceTo).max().orElseThrow())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }
}
