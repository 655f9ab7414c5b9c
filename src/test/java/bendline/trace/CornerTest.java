package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Ridges given as formulas, with the scatter of a measured one: a third of a pixel. */
class CornerTest {

    private static final int STATIONS = 300;
    private static final double LENGTH_PX = STATIONS * Strip.STEP_PX;
    private static final double SCATTER_PX = 0.35;

    /** Where a ridge has its corner, pixels along it. */
    private static double corner(DoubleUnaryOperator offsetPx, double weight) {
        Random random = new Random(7);
        double[] offset = new double[STATIONS];
        for (int i = 0; i < STATIONS; i++) {
            offset[i] = offsetPx.applyAsDouble(i * Strip.STEP_PX) + SCATTER_PX * random.nextGaussian();
        }
        double[] weights = new double[STATIONS];
        Arrays.fill(weights, weight);
        return Corner.before(offset, weights, 0, STATIONS - 1) * Strip.STEP_PX;
    }

    private static DoubleUnaryOperator turning(double atPx, double degrees) {
        return s -> s < atPx ? 0 : Math.tan(Math.toRadians(degrees)) * (s - atPx);
    }

    @Test
    void lineThatTurnsOffAtTheTipEndsTheBlankThere() {
        for (double degrees : new double[] {15, -25, 40}) {
            assertThat(corner(turning(260, degrees), 8)).isCloseTo(260, within(6.0));
        }
    }

    @Test
    void aStraightRodHasNoCorner() {
        assertThat(corner(s -> 0, 8)).isCloseTo(LENGTH_PX, within(2.0));
    }

    /** A circular arc that turns by 60 degrees over its length bends as hard as a rod does in a cast. */
    @Test
    void aBentRodHasNoCorner() {
        double radius = LENGTH_PX / Math.toRadians(60);
        assertThat(corner(s -> radius - Math.sqrt(radius * radius - s * s / 4), 8))
                .isCloseTo(LENGTH_PX, within(2.0));
    }

    @Test
    void aTurnTooSlightToTellIsNone() {
        assertThat(corner(turning(260, 4), 8)).isCloseTo(LENGTH_PX, within(2.0));
    }

    @Test
    void whereHardlyAnythingShowsNoCornerIsCertain() {
        assertThat(corner(turning(260, 12), 1e-4)).isCloseTo(LENGTH_PX, within(2.0));
    }
}
