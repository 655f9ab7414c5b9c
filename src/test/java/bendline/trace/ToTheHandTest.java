package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ToTheHandTest {

    private static Polyline arc(double radius, double from, double to) {
        return new Polyline(IntStream.rangeClosed(0, 40)
                .mapToObj(k -> from + (to - from) * k / 40)
                .map(s -> new Point(500 + radius * Math.sin(s / radius), 400 - radius * (1 - Math.cos(s / radius))))
                .toList());
    }

    @Test
    void aStraightLineGoesOnStraight() {
        Polyline line = new Polyline(List.of(new Point(100, 300), new Point(400, 300)));
        Polyline drawn = ToTheHand.drawn(line, 360, 25);
        assertThat(drawn.first().x()).isCloseTo(40, within(1e-6));
        assertThat(drawn.first().y()).isCloseTo(300, within(1e-6));
        assertThat(drawn.last()).isEqualTo(new Point(400, 300));
    }

    @Test
    void anArcGoesOnBendingToTheSameSideALittleLess() {
        Polyline drawn = ToTheHand.drawn(arc(600, 0, 400), 440, 25);
        Point whole = arc(600, -40, 400).first();
        // Over a tenth of the rod the fading curvature costs less than half a pixel.
        assertThat(drawn.first().distance(whole)).isLessThan(0.5);
        assertThat(drawn.length()).isCloseTo(440, within(0.5));
    }

    @Test
    void howeverMuchIsMissingItNeverCurlsUp() {
        Polyline drawn = ToTheHand.drawn(arc(120, 0, 150), 320, 60);
        double turned = drawn.tangentAt(0).angle()
                - ToTheHand.drawn(arc(120, 0, 150), 151, 60).tangentAt(0).angle();
        // The curvature falls to nothing over 80 px, so it turns by at most 40 px / 120 px.
        assertThat(Math.abs(turned)).isLessThan(0.4);
    }
}
