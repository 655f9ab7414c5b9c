package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FixedIntervalSmootherTest {

    private static final StateModel CONSTANT_VELOCITY = StateModel.integratedNoise(2);

    private static double[] filled(int n, double value) {
        double[] out = new double[n];
        Arrays.fill(out, value);
        return out;
    }

    private static double[] unevenTimes(int n, Random random) {
        double[] t = new double[n];
        for (int i = 1; i < n; i++) {
            t[i] = t[i - 1] + 0.5 + random.nextDouble();
        }
        return t;
    }

    /** Rauch, Tung and Striebel, AIAA Journal 3 (1965) 1445: smoothing never loses, and at the last sample changes nothing. */
    @Test
    void smoothedVarianceIsAtMostTheFilteredOneAndEqualAtTheEnd() {
        Random random = new Random(1);
        int n = 200;
        double[] y = random.doubles(n).toArray();
        FixedIntervalSmoother.Passes p = new FixedIntervalSmoother(
                        StateModel.integratedNoise(3), unevenTimes(n, random), filled(n, 0.01), filled(n, 1))
                .run(y, new double[3], new double[] {1e4, 1e4, 1e4});
        for (int k = 0; k < n; k++) {
            for (int c = 0; c < 3; c++) {
                double filtered = p.filteredCov()[k][c][c];
                assertThat(p.smoothedCov()[k][c][c]).isLessThanOrEqualTo(filtered * (1 + 1e-9));
            }
        }
        assertThat(p.smoothed()[n - 1]).containsExactly(p.filtered()[n - 1]);
        assertThat(p.smoothedCov()[n - 1][0][0]).isEqualTo(p.filteredCov()[n - 1][0][0]);
    }

    @Test
    void otherSamplesAtTheSamePlacesAreSmoothedAlikeByTheKnownGains() {
        Random random = new Random(3);
        int n = 80;
        double[] first = random.doubles(n).toArray();
        double[] second = random.doubles(n).toArray();
        for (int k = 20; k < 33; k++) {
            first[k] = Double.NaN;
            second[k] = Double.NaN;
        }
        double[] t = unevenTimes(n, random);
        FixedIntervalSmoother s =
                new FixedIntervalSmoother(StateModel.integratedNoise(3), t, filled(n, 0.3), filled(n, 1));
        double[] vague = {1e4, 1e4, 1e4};
        s.run(first, new double[3], vague);
        double[][] again = s.again(second, new double[3]);
        double[][] anew = s.run(second, new double[3], vague).smoothed();
        for (int k = 0; k < n; k++) {
            assertThat(again[k]).containsExactly(anew[k], offset(1e-9));
        }
    }

    @Test
    void noiselessLineComesBackUnchanged() {
        Random random = new Random(2);
        double[] t = unevenTimes(100, random);
        double[] y = Arrays.stream(t).map(u -> 3 - 0.25 * u).toArray();
        FixedIntervalSmoother.Passes p = new FixedIntervalSmoother(
                        CONSTANT_VELOCITY, t, filled(100, 1e-9), filled(100, 1e-3))
                .run(y, new double[] {3, 0}, new double[] {1, 1e4});
        for (int k = 0; k < 100; k++) {
            assertThat(p.smoothed()[k][0]).isEqualTo(y[k], offset(1e-9));
            assertThat(p.smoothed()[k][1]).isEqualTo(-0.25, offset(1e-9));
        }
    }

    /** Kalata's steady alpha-beta filter (IEEE Trans. AES 20 (1984) 174, formula from memory): index 1 gives 0.75 and 0.5. */
    @Test
    void steadyGainAtTrackingIndexOneIsKalatas() {
        StateModel piecewiseConstantAcceleration = new StateModel() {
            @Override
            public int size() {
                return 2;
            }

            @Override
            public double[][] transition(double dt) {
                return new double[][] {{1, dt}, {0, 1}};
            }

            @Override
            public double[][] noise(double dt) {
                double d2 = dt * dt;
                return new double[][] {{d2 * d2 / 4, d2 * dt / 2}, {d2 * dt / 2, d2}};
            }
        };
        int n = 200;
        double[] t = new double[n];
        Arrays.setAll(t, i -> i);
        double[] gain = new FixedIntervalSmoother(piecewiseConstantAcceleration, t, filled(n, 1), filled(n, 1))
                .run(new double[n], new double[2], new double[] {10, 10})
                .gain();
        assertThat(gain[0]).isEqualTo(0.75, offset(1e-9));
        assertThat(gain[1]).isEqualTo(0.5, offset(1e-9));
    }

    @Test
    void integratedNoiseSplitsOverHalfSteps() {
        StateModel m = StateModel.integratedNoise(3);
        double[][] half = m.noise(0.5);
        double[][] whole = SmallMatrix.plusScaled(SmallMatrix.sandwich(m.transition(0.5), half), half, 1);
        for (int i = 0; i < 3; i++) {
            assertThat(whole[i]).containsExactly(m.noise(1)[i], offset(1e-14));
        }
    }
}
