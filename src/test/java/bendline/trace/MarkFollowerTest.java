package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class MarkFollowerTest {

    private static final int STEPS = 80;

    /** A line of 400 px whose heading is given along its length, 0 to 1, radians. */
    private static Polyline heading(DoubleUnaryOperator radians) {
        List<Point> points = new ArrayList<>(List.of(new Point(500, 500)));
        for (int k = 0; k < STEPS; k++) {
            double angle = radians.applyAsDouble((k + 0.5) / STEPS);
            Point last = points.get(points.size() - 1);
            points.add(last.plus(new Point(Math.cos(angle), Math.sin(angle)).times(400.0 / STEPS)));
        }
        return new Polyline(points);
    }

    @Test
    void aBlankBentToTheFullDoesNotWind() {
        // Its tip at right angles to its butt, which is where the test curve is read; the turn grows outwards.
        assertThat(MarkFollower.winds(heading(u -> Math.toRadians(90) * u * u))).isFalse();
        assertThat(MarkFollower.winds(heading(u -> Math.toRadians(-90) * u))).isFalse();
    }

    @Test
    void aLineThatTurnsAwayInsideTheHandDoes() {
        assertThat(MarkFollower.winds(heading(u -> u < 0.15 ? Math.toRadians(-120) * (1 - u / 0.15) : 0.3 * u)))
                .isTrue();
    }
}
