package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Lengths against those of a straight rod of 3.1 m projected by a pinhole camera, 10 m away and turned about the vertical. */
class RodLengthTest {

    private static final double ROD_M = 3.1;
    private static final double AWAY_M = 10;
    private static final double FOCAL_PX = 1500;

    private static Point pixel(double x, double y, double yaw) {
        double depth = AWAY_M + x * Math.sin(yaw);
        return new Point(960 + FOCAL_PX * x * Math.cos(yaw) / depth, 700 - FOCAL_PX * y / depth);
    }

    private static Polyline rod(double degrees, double yaw, double share) {
        double angle = Math.toRadians(degrees);
        return new Polyline(List.of(
                pixel(0, 0, yaw), pixel(share * ROD_M * Math.cos(angle), share * ROD_M * Math.sin(angle), yaw)));
    }

    private static List<Polyline> scouted(double yaw, double scatter) {
        Random random = new Random(5);
        List<Polyline> out = new ArrayList<>();
        for (int i = 0; i < 32; i++) {
            double share = RodLength.INTO_HAND * (1 + scatter * random.nextGaussian());
            out.add(rod(40 + 130.0 * i / 31, yaw, i % 8 == 3 ? 0.6 : share));
        }
        return out;
    }

    private static double worst(double yaw, double scatter) {
        RodLength.Estimate found = RodLength.of(scouted(yaw, scatter));
        double worst = 0;
        for (int degrees = 40; degrees <= 170; degrees += 10) {
            Polyline whole = rod(degrees, yaw, 1);
            worst = Math.max(worst, Math.abs(found.along(whole) / whole.length() - 1));
        }
        return worst;
    }

    @Test
    void aRodSeenSquarelyHasOneLength() {
        RodLength.Estimate found = RodLength.of(scouted(0, 0));
        assertThat(found.freePx()).isCloseTo(FOCAL_PX * ROD_M / AWAY_M, within(2.0));
        assertThat(found.lean()).isCloseTo(0, within(0.01));
        assertThat(found.squeeze()).isCloseTo(0, within(0.01));
    }

    /** Half of the pictures show two thirds of a rod that is held still, the rest the whole of it swinging. */
    @Test
    void aRodHeldStillDoesNotOutvoteTheSwing() {
        List<Polyline> curves = new ArrayList<>();
        for (int i = 0; i < 32; i++) {
            curves.add(i < 15 ? rod(60 + 0.1 * i, 0, 0.66) : rod(40 + 7 * (i - 15), 0, 1));
        }
        assertThat(RodLength.of(curves).agreement()).isGreaterThan(0.85);
    }

    @Test
    void ofAPhoneThatIsNotSquareTheLengthFollowsTheDirection() {
        // From one end of the swing to the other the length changes by 13 %.
        double left = rod(170, Math.toRadians(12), 1).length();
        double right = rod(40, Math.toRadians(12), 1).length();
        assertThat(Math.abs(left / right - 1)).isGreaterThan(0.08);
        assertThat(worst(Math.toRadians(12), 0)).isLessThan(0.02);
        assertThat(worst(Math.toRadians(-12), 0)).isLessThan(0.02);
    }

    @Test
    void scatterOfTheCurvesIsEvenedOut() {
        assertThat(worst(Math.toRadians(12), 0.04)).isLessThan(0.04);
        assertThat(worst(0, 0.04)).isLessThan(0.04);
    }
}
