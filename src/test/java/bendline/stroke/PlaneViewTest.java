package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import bendline.scene.Setup.Side;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Straight rods seen through a pinhole (the perspective of any textbook) that stands askew. */
class PlaneViewTest {

    private static final double ROD_M = 3.3;
    private static final double AWAY_M = 11.8;
    private static final double FOCAL_PX = 1510;

    /** Pixels forward and up of a place in the plane of the cast, metres from the hand. */
    private static Point seen(double x, double y, double yaw) {
        double depth = AWAY_M - x * Math.sin(yaw);
        return new Point(FOCAL_PX * x * Math.cos(yaw) / depth, FOCAL_PX * y / depth);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-15, -6, 0, 6, 15})
    void aRodSwungRoundTellsHowThePhoneStands(double yawDeg) {
        double yaw = Math.toRadians(yawDeg);
        int n = 120;
        double[] nan = new double[n];
        Arrays.fill(nan, Double.NaN);
        double[][] a = new double[5][n];
        for (int i = 0; i < n; i++) {
            double angle = Math.toRadians(40 + 110.0 * i / n);
            Point tip = seen(ROD_M * Math.cos(angle), ROD_M * Math.sin(angle), yaw);
            a[0][i] = i / 60.0;
            a[1][i] = Math.atan2(tip.y(), tip.x());
            a[2][i] = tip.x();
            a[3][i] = tip.y();
            a[4][i] = 1;
        }
        double[] zero = new double[n];
        RodSeries rod = new RodSeries(
                Side.RIGHT,
                a[0],
                a[1],
                nan,
                zero,
                zero,
                nan,
                a[2],
                a[3],
                nan,
                a[4],
                nan,
                nan,
                nan,
                nan,
                nan,
                nan,
                nan,
                zero);
        double usual = FOCAL_PX * ROD_M / AWAY_M;
        PlaneView view = PlaneView.of(rod, usual);
        Point far = view.square(seen(4, 3, yaw)).times(ROD_M / usual);
        assertThat(far.x()).isCloseTo(4, within(0.05 * 4));
        assertThat(far.y()).isCloseTo(3, within(0.05 * 3));
    }
}
