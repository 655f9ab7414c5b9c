package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.offset;

import java.util.Arrays;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LocalPolynomialTest {

    private static final Offset<Double> ROUNDING = offset(1e-12);

    /** Savitzky and Golay, Analytical Chemistry 36 (1964) 1627: convolution weights, numerators and norm. */
    @ParameterizedTest
    @CsvSource({
        "2, 0, -3 12 17 12 -3, 35",
        "2, 1, -2 -1 0 1 2, 10",
        "2, 2, 2 -1 -2 -1 2, 7",
        "2, 0, -2 3 6 7 6 3 -2, 21",
        "2, 1, -3 -2 -1 0 1 2 3, 28",
        "2, 2, 5 0 -3 -4 -3 0 5, 42",
        "2, 0, -21 14 39 54 59 54 39 14 -21, 231",
        "2, 2, 28 7 -8 -17 -20 -17 -8 7 28, 462",
        "2, 0, -36 9 44 69 84 89 84 69 44 9 -36, 429",
        "4, 0, 5 -30 75 131 75 -30 5, 231",
        "4, 1, 22 -67 -58 0 58 67 -22, 252",
        "4, 2, -13 67 -19 -70 -19 67 -13, 132",
        "4, 1, 86 -142 -193 -126 0 126 193 142 -86, 1188",
        "4, 2, -126 371 151 -211 -370 -211 151 371 -126, 1716"
    })
    void weightsOnAnEvenGridAreThePublishedOnes(int degree, int derivative, String numerators, double norm) {
        double[] published = Arrays.stream(numerators.split(" "))
                .mapToDouble(s -> Double.parseDouble(s) / norm)
                .toArray();
        double[] offsets = new double[published.length];
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = i - (published.length - 1) / 2;
        }
        assertThat(LocalPolynomial.weights(offsets, degree, derivative)).containsExactly(published, ROUNDING);
    }

    /** First row: computed from the normal equations; second row: SciPy's documented example of savgol_coeffs. */
    @ParameterizedTest
    @CsvSource({"0, 31 9 -3 -5 3", "1, 9 13 12 6 -5"})
    void weightsAtTheEdgeOfFivePointsAreThePublishedOnes(int place, String numerators) {
        double[] published = Arrays.stream(numerators.split(" "))
                .mapToDouble(s -> Double.parseDouble(s) / 35)
                .toArray();
        double[] offsets = {-place, 1 - place, 2 - place, 3 - place, 4 - place};
        assertThat(LocalPolynomial.weights(offsets, 2, 0)).containsExactly(published, ROUNDING);
    }

    /** Root of the summed squares of the Savitzky-Golay weights: what unit noise becomes. */
    @ParameterizedTest
    @CsvSource({"5, 2, 1, 0.3162", "7, 2, 1, 0.1890", "9, 2, 2, 0.1140", "11, 2, 0, 0.4555", "9, 4, 1, 0.3381"})
    void statedUncertaintyIsTheNoiseGain(int points, int degree, int derivative, double gain) {
        double[] t = new double[points];
        double[] one = new double[points];
        Arrays.fill(one, 1);
        for (int i = 0; i < points; i++) {
            t[i] = i - (points - 1) / 2;
        }
        PolynomialFit fit = LocalPolynomial.fit(t, new double[points], one, 0, degree);
        assertThat(fit.sd(0, derivative)).isEqualTo(gain, offset(5e-5));
    }

    /** A ball tossed and filmed at 30 Hz (BMClab, UFABC): its fall fitted by a parabola. */
    @Test
    void tossedBallFallsAsPublished() {
        double[][] ball = SharedData.columns("balltoss.txt");
        double[] one = new double[ball[0].length];
        Arrays.fill(one, 1);
        PolynomialFit y = LocalPolynomial.fit(ball[0], ball[2], one, 0, 2);
        PolynomialFit x = LocalPolynomial.fit(ball[0], ball[1], one, 0, 2);
        assertThat(y.derivative(0, 2)).isEqualTo(-9.97811, offset(1e-5));
        assertThat(y.derivative(0, 1)).isEqualTo(2.688231, offset(1e-6));
        assertThat(y.sd(0, 2) * Math.sqrt(y.chiSquare() / y.freedom())).isEqualTo(0.02252, offset(1e-5));
        assertThat(x.derivative(0, 1)).isEqualTo(1.665355, offset(1e-6));
        assertThat(y.derivative(0, 2)).as("g within 3 %").isBetween(-9.81 * 1.03, -9.81 * 0.97);
    }

    @Test
    void unevenSamplesOfACubicGiveItsDerivativesAnywhere() {
        Random random = new Random(4);
        double[] t = random.doubles(12, 100, 101).sorted().toArray();
        double[] sd = random.doubles(12, 0.5, 2).toArray();
        double[] y = Arrays.stream(t)
                .map(u -> 2 - 3 * (u - 100) + 5 * Math.pow(u - 100, 3))
                .toArray();
        PolynomialFit fit = LocalPolynomial.fit(t, y, sd, 100.4, 3);
        assertThat(fit.value(100.7)).isEqualTo(2 - 2.1 + 5 * 0.343, offset(1e-8));
        assertThat(fit.derivative(100.7, 1)).isEqualTo(-3 + 15 * 0.49, offset(1e-7));
        assertThat(fit.derivative(100.7, 2)).isEqualTo(30 * 0.7, offset(1e-6));
    }

    @Test
    void tooFewSamplesAreRefused() {
        double[] two = {0, 1};
        assertThatThrownBy(() -> LocalPolynomial.fit(two, two, new double[] {1, 1}, 0, 2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("needs 3 samples");
    }
}
