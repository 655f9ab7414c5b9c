package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SwayTest {

    private static List<Look> swinging(double px, double fromDegrees, double toDegrees) {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < 60; t++) {
            double degrees = fromDegrees + (toDegrees - fromDegrees) * (1 + Math.sin(t / 6.0)) / 2;
            Polyline line = new Polyline(List.of(
                    new Point(500, 600),
                    new Point(500, 600)
                            .plus(Point.direction(-Math.toRadians(degrees)).times(px))));
            Fit fit = new Fit(line, 0.5, 1, 0.01, 3, 100, 1, 0);
            out.add(t % 7 == 0 ? new Look(t / 60.0, List.of(fit), null) : new Look(t / 60.0, List.of(fit), fit));
        }
        return out;
    }

    @Test
    void aReedOnlySways() {
        assertThat(Sway.only(swinging(126, 70, 95), 126, 1080)).isTrue();
        // Across the direction in which angles begin anew, too.
        assertThat(Sway.only(swinging(126, 170, 195), 126, 1080)).isTrue();
    }

    @Test
    void aRodThatIsSwungOrLongIsBelieved() {
        assertThat(Sway.only(swinging(126, 40, 150), 126, 1080)).isFalse();
        assertThat(Sway.only(swinging(300, 70, 95), 300, 1080)).isFalse();
    }
}
