package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrendSmootherTest {

    private static double[] map(double[] t, DoubleUnaryOperator f) {
        return Arrays.stream(t).map(f).toArray();
    }

    private static double[] grid(double step, int n) {
        double[] t = new double[n];
        Arrays.setAll(t, i -> i * step);
        return t;
    }

    private static double rms(double[] a, double[] b, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return Math.sqrt(sum / (to - from));
    }

    /**
     * Pezzack, Norman and Winter, Journal of Biomechanics 10 (1977) 377, as printed by Vint and Hinrichs (1996): the angle of a
     * swung arm, its true acceleration, noise of 0.0063 rad added. Plain second differences miss the acceleration by 33.36 rad/s²
     * rms on the noisy angle and by 11.10 on the raw one, the best two-pass Butterworth filters by 4.6 and 4.2.
     */
    @Test
    void pezzackAccelerationIsAsGoodAsTheBestFixedFilter() {
        double[][] arm = SharedData.columns("Pezzack.txt");
        int n = arm[0].length;
        assertThat(n).isEqualTo(142);
        double[] sd = new double[n];
        Arrays.fill(sd, 0.0063);
        double noisy = rms(new TrendSmoother(0.1).smooth(arm[0], arm[2], sd).accelerations(), arm[3], 5, n - 5);
        Arrays.fill(sd, 0.002);
        double raw = rms(new TrendSmoother(0.1).smooth(arm[0], arm[1], sd).accelerations(), arm[3], 5, n - 5);
        assertThat(noisy).as("noisy angle").isLessThan(6);
        assertThat(raw).as("raw angle").isLessThan(11.096 / 2);
    }

    /** A stroke of a quarter second after two slow seconds: the peak must not be flattened, the slow part must be quiet. */
    @ParameterizedTest
    @ValueSource(ints = {30, 60, 120, 240})
    void quickStrokeAfterASlowSwingKeepsItsPeak(int fps) {
        DoubleUnaryOperator angle = t -> 1 + 0.25 * Math.sin(1.2 * t) - 1.5 * smoothStep((t - 2) / 0.3);
        DoubleUnaryOperator rate = t -> 0.3 * Math.cos(1.2 * t) - 1.5 * slope((t - 2) / 0.3) / 0.3;
        double[] t = grid(1.0 / fps, 3 * fps);
        double[] slow = map(t, rate);
        double truePeak = rate.applyAsDouble(2.15);
        double late = 0;
        double height = 0;
        double unrest = 0;
        int seeds = 5;
        for (int seed = 0; seed < seeds; seed++) {
            Random random = new Random(seed);
            double[] y = map(t, u -> angle.applyAsDouble(u) + 0.006 * random.nextGaussian());
            Trend trend = new TrendSmoother(0.1).smooth(t, y, map(t, u -> 0.006));
            SmoothCurve r = trend.rateCurve();
            double peak = r.argMin(1.9, 2.4);
            late += Math.abs(peak - 2.15) / seeds;
            height += r.at(peak) / truePeak / seeds;
            unrest += rms(trend.rates(), slow, fps / 4, 7 * fps / 4) / seeds;
        }
        assertThat(late).as("peak's time, s").isLessThan(Math.max(0.25 / fps, 0.006));
        assertThat(height).as("peak's height over the true one").isEqualTo(1, offset(0.03));
        assertThat(unrest).as("noise of the slow part's rate, rad/s").isLessThan(0.06);
    }

    private static double smoothStep(double u) {
        double c = Math.max(0, Math.min(1, u));
        return c * c * c * (10 - 15 * c + 6 * c * c);
    }

    private static double slope(double u) {
        return u <= 0 || u >= 1 ? 0 : 30 * u * u * (1 - u) * (1 - u);
    }

    @Test
    void statedUncertaintiesHoldTheTruthAboutTwoTimesInThree() {
        double[] t = grid(1 / 60.0, 600);
        int inValue = 0;
        int inRate = 0;
        int all = 0;
        for (int seed = 0; seed < 5; seed++) {
            Random random = new Random(seed);
            double[] y = map(t, u -> Math.sin(3 * u) + 0.02 * random.nextGaussian());
            Trend trend = new TrendSmoother(0.1).smooth(t, y, map(t, u -> 0.02));
            for (int i = 0; i < t.length; i++) {
                inValue += Math.abs(trend.values()[i] - Math.sin(3 * t[i])) <= trend.valueSds()[i] ? 1 : 0;
                inRate += Math.abs(trend.rates()[i] - 3 * Math.cos(3 * t[i])) <= trend.rateSds()[i] ? 1 : 0;
                all++;
            }
        }
        assertThat((double) inValue / all).isBetween(0.55, 0.85);
        assertThat((double) inRate / all).isBetween(0.55, 0.9);
    }

    @Test
    void drawsScatterAsTheUncertaintiesSay() {
        double[] t = grid(1 / 60.0, 200);
        Random random = new Random(7);
        Trend trend = new TrendSmoother(0.1)
                .smooth(t, map(t, u -> Math.sin(3 * u) + 0.02 * random.nextGaussian()), map(t, u -> 0.02));
        double sum = 0;
        int draws = 300;
        for (int k = 0; k < draws; k++) {
            double d = trend.draw(k).rates().at(t[100]) - trend.rates()[100];
            sum += d * d;
        }
        assertThat(Math.sqrt(sum / draws)).isEqualTo(trend.rateSds()[100], offset(0.15 * trend.rateSds()[100]));
    }

    @Test
    void strayIsNotFollowed() {
        double[] t = grid(1 / 60.0, 200);
        Random random = new Random(3);
        double[] y = map(t, u -> Math.sin(3 * u) + 0.01 * random.nextGaussian());
        y[90] += 1;
        Trend trend = new TrendSmoother(0.1).smooth(t, y, map(t, u -> 0.01));
        assertThat(trend.values()[90]).isEqualTo(Math.sin(3 * t[90]), offset(0.02));
    }

    @Test
    void shortGapsAreBridgedLongOnesAreNot() {
        double[] t = grid(1 / 60.0, 200);
        double[] y = map(t, u -> Math.sin(3 * u));
        Arrays.fill(y, 50, 54, Double.NaN);
        Arrays.fill(y, 100, 130, Double.NaN);
        Trend trend = new TrendSmoother(0.1).smooth(t, y, map(t, u -> 0.001));
        assertThat(trend.values()[52]).isEqualTo(Math.sin(3 * t[52]), offset(1e-3));
        assertThat(trend.values()[115]).isNaN();
        assertThat(trend.rateSds()[115]).isNaN();
        assertThat(trend.valueCurve().at(t[115])).isNaN();
    }

    @Test
    void fourSamplesAreNeeded() {
        double[] t = {0, 1, 2, 3, 4};
        double[] y = {1, Double.NaN, 2, Double.NaN, 3};
        Trend trend = new TrendSmoother(10).smooth(t, y, new double[] {1, 1, 1, 1, 1});
        assertThat(trend.values()).containsOnly(Double.NaN);
        assertThat(trend.draw(1).values().at(2)).isNaN();
    }
}
