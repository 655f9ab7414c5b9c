package bendline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.offset;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CircleTest {

    @Test
    void shortNoisyArcGivesItsCircle() {
        Random random = new Random(1);
        List<Point> arc = new ArrayList<>();
        for (int i = 0; i <= 60; i++) {
            double r = 100 + 0.1 * random.nextGaussian();
            arc.add(new Point(500, -300).plus(Point.direction(0.5 + i / 60.0).times(r)));
        }
        Circle c = Circle.through(arc);
        assertThat(c.radius()).isEqualTo(100, offset(1.0));
        assertThat(c.centre().distance(new Point(500, -300))).isLessThan(1.0);
    }

    @Test
    void threePointsGiveTheCircleThroughThem() {
        Circle c = Circle.through(List.of(new Point(1, 0), new Point(0, 1), new Point(-1, 0)));
        assertThat(c.radius()).isEqualTo(1, offset(1e-12));
        assertThat(c.outside(new Point(0, -3))).isEqualTo(2, offset(1e-12));
    }

    @Test
    void pointsOnALineAreRefused() {
        List<Point> line = List.of(new Point(0, 0), new Point(1, 1), new Point(2, 2), new Point(5, 5));
        assertThatThrownBy(() -> Circle.through(line)).isInstanceOf(IllegalArgumentException.class);
    }
}
