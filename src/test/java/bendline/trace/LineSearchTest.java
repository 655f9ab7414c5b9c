package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LineSearchTest {

    private static final int WIDTH = 320;
    private static final int HEIGHT = 240;

    /** A quarter of an ellipse: no curve of the family that is searched. */
    private static Polyline arc(double x, double y) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= 60; i++) {
            double a = Math.PI / 2 * i / 60;
            points.add(new Point(x + 200 * Math.sin(a), y + 90 * (1 - Math.cos(a))));
        }
        return new Polyline(points);
    }

    private static Plane picture(Polyline blank, double level, long seed) {
        Random random = new Random(seed);
        float[] v = new float[WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double d = blank.distanceTo(new Point(x + 0.5, y + 0.5));
                v[y * WIDTH + x] = (float) (level * Math.exp(-d * d / 2) + 0.4 * random.nextGaussian());
            }
        }
        return new Plane(WIDTH, HEIGHT, v);
    }

    private static double apart(Polyline a, Polyline b) {
        return a.resampled(30).points().stream()
                .mapToDouble(b::distanceTo)
                .average()
                .orElseThrow();
    }

    @Test
    void theCurveBetweenTwoPointsIsFoundHoweverBent() {
        Polyline arc = arc(60, 80);
        LineSearch search = new LineSearch(picture(arc, -5, 1), -1);
        assertThat(apart(search.between(arc.first(), arc.last()), arc)).isLessThan(3);
    }

    @Test
    void aBrightLineIsNoDarkOne() {
        Polyline arc = arc(60, 80);
        Plane plane = picture(arc, 5, 2);
        assertThat(new LineSearch(plane, 1).strength(arc)).isGreaterThan(2);
        assertThat(new LineSearch(plane, -1).strength(arc)).isNegative();
    }

    @Test
    void aLineThatMovedIsFoundAgainAndNotSlidAlong() {
        Polyline was = arc(60, 80);
        Polyline is = arc(78, 69);
        Polyline found = new LineSearch(picture(is, 4, 3), 1).moved(was, 30, 30);
        assertThat(apart(found, is)).isLessThan(1);
        assertThat(found.last().distance(is.last())).isEqualTo(0, offset(6.0));
    }

    @Test
    void aLineThatBentMoreIsFoundWithItsNewShape() {
        Polyline was = arc(60, 80);
        List<Point> bent = new ArrayList<>();
        for (int i = 0; i <= 60; i++) {
            double u = i / 60.0;
            bent.add(was.at(u * was.length()).plus(new Point(-9 * u * u, 6 * u * u)));
        }
        Polyline is = new Polyline(bent);
        Polyline found = new LineSearch(picture(is, 4, 4), 1).moved(was, 12, 3);
        assertThat(apart(found, is)).isLessThan(1.5);
    }

    @Test
    void ofALineHalfOutOfThePictureTheOtherHalfIsInView() {
        Polyline half = new Polyline(List.of(new Point(-100, 120), new Point(100, 120)));
        Polyline shown = new LineSearch(Plane.zeros(WIDTH, HEIGHT), 1).inView(half);
        assertThat(shown).isNotNull();
        assertThat(shown.length()).isEqualTo(100, offset(6.0));
        assertThat(new LineSearch(Plane.zeros(WIDTH, HEIGHT), 1).inView(half.map(p -> p.minus(new Point(200, 0)))))
                .isNull();
    }
}
