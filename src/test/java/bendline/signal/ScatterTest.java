package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ScatterTest {

    private static double[] samples(int n, double sd) {
        Random random = new Random(11);
        return IntStream.range(0, n)
                .mapToDouble(i -> 400 + 2 * i - 0.03 * i * i + sd * random.nextGaussian())
                .toArray();
    }

    @Test
    void theScatterAboutAParabolaIsThatOfTheNoise() {
        // A median of 2000 correlated differences is known to about 3 %.
        assertThat(Scatter.of(samples(2000, 1.7), 1)).isCloseTo(1.7, within(0.12));
    }

    @Test
    void aSmoothCourseHasNone() {
        assertThat(Scatter.of(samples(50, 0), 3)).isCloseTo(0, within(1e-9));
    }

    @Test
    void aFewStraysAndGapsHardlyCount() {
        double[] y = samples(2000, 1.7);
        for (int i = 0; i < 60; i++) {
            y[33 * i] += 500;
            y[33 * i + 16] = Double.NaN;
        }
        assertThat(Scatter.of(y, 1)).isCloseTo(1.7, within(0.35));
    }

    @Test
    void errorsThatLastAreMetByLongStrides() {
        Random random = new Random(12);
        double[] noise = random.doubles(400).map(u -> 1.7 * Math.sqrt(12) * u).toArray();
        double[] held = IntStream.range(0, 2000).mapToDouble(i -> noise[i / 5]).toArray();
        assertThat(Scatter.of(held, 1)).isLessThan(0.5);
        assertThat(Scatter.of(held, 5)).isGreaterThan(1.4);
    }

    @Test
    void tooFewSamplesTellNothing() {
        assertThat(Scatter.of(new double[] {1, 2, 1, 2}, 1)).isNaN();
        assertThat(Scatter.of(new double[2], 5)).isNaN();
    }
}
