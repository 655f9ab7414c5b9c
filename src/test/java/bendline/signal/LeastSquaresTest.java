package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.fitting.PolynomialCurveFitter;
import org.apache.commons.math3.fitting.WeightedObservedPoints;
import org.junit.jupiter.api.Test;

class LeastSquaresTest {

    /** Against Apache Commons Math's weighted polynomial fit, which gets there by another way (Levenberg and Marquardt). */
    @Test
    void aWeightedParabolaIsThatOfAGeneralPurposeLibrary() {
        Random random = new Random(8);
        for (int round = 0; round < 50; round++) {
            int n = 3 + random.nextInt(15);
            double[] x = new double[n];
            double[] y = new double[n];
            double[] weights = new double[n];
            WeightedObservedPoints points = new WeightedObservedPoints();
            for (int i = 0; i < n; i++) {
                x[i] = -1 + 2.0 * i / (n - 1);
                y[i] = random.nextGaussian();
                weights[i] = 1e-3 + random.nextDouble();
                points.add(weights[i], x[i], y[i]);
            }
            double[] theirs = PolynomialCurveFitter.create(2).fit(points.toList());
            assertThat(LeastSquares.parabola(x, y, weights)).containsExactly(theirs, within(1e-8));
        }
    }
}
