package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against sines whose frequency is known. */
class OscillationTest {

    private static double[] times(int n, double step) {
        double[] t = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = i * step;
        }
        return t;
    }

    @Test
    void aDampedSwingOnADriftIsFoundInNoise() {
        double[] t = times(200, 0.02);
        double[] y = new double[200];
        Random random = new Random(3);
        for (int i = 0; i < y.length; i++) {
            y[i] = 5
                    + 2 * t[i]
                    + 3 * Math.exp(-0.3 * t[i]) * Math.sin(2 * Math.PI * 1.37 * t[i] + 0.6)
                    + 0.3 * random.nextGaussian();
        }
        Oscillation found = Oscillation.of(t, y, 0.4, 8, 0, 0.3, 1);
        assertThat(found).isNotNull();
        assertThat(found.hz()).isCloseTo(1.37, within(3 * found.sdHz()));
        assertThat(found.sdHz()).isLessThan(0.02);
        assertThat(found.explained()).isGreaterThan(0.9);
    }

    @Test
    void noiseIsHardlyExplained() {
        double[] y = new Random(4).doubles(200, -1, 1).toArray();
        Oscillation found = Oscillation.of(times(200, 0.02), y, 0.4, 8, 0, 0.3);
        assertThat(found == null ? 0 : found.explained()).isLessThan(0.2);
    }

    @Test
    void aSwingOutsideWhatIsAskedIsNotFoundAtItsEdge() {
        double[] t = times(200, 0.02);
        double[] y = new double[200];
        for (int i = 0; i < y.length; i++) {
            y[i] = Math.sin(2 * Math.PI * 0.8 * t[i]);
        }
        assertThat(Oscillation.of(t, y, 1, 8, 0)).isNull();
    }
}
