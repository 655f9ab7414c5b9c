package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class SmoothCurveTest {

    private static SmoothCurve sine(int samples) {
        double[] t = new double[samples];
        Arrays.setAll(t, i -> 2 * Math.PI * i / (samples - 1));
        double[] v = Arrays.stream(t).map(Math::sin).toArray();
        double[] d = Arrays.stream(t).map(Math::cos).toArray();
        return new SmoothCurve(t, v, d);
    }

    @Test
    void crossingsLieBetweenSamples() {
        SmoothCurve s = sine(41);
        assertThat(s.firstRise(0.5, 0, 7)).isEqualTo(Math.PI / 6, offset(1e-5));
        assertThat(s.firstFall(0.5, 0, 7)).isEqualTo(5 * Math.PI / 6, offset(1e-5));
        assertThat(s.lastRise(-0.5, 0, 7)).isEqualTo(11 * Math.PI / 6, offset(1e-5));
        assertThat(s.lastFall(-0.5, 0, 7)).isEqualTo(7 * Math.PI / 6, offset(1e-5));
        assertThat(s.firstRise(2, 0, 7)).isNaN();
    }

    @Test
    void extremesLieBetweenSamplesAndRespectTheWindow() {
        SmoothCurve s = sine(38);
        assertThat(s.argMax(0, 7)).isEqualTo(Math.PI / 2, offset(1e-4));
        assertThat(s.argMin(0, 7)).isEqualTo(3 * Math.PI / 2, offset(1e-4));
        assertThat(s.argMax(2, 4)).isEqualTo(2, offset(1e-12));
        assertThat(s.argMax(4, 2)).isNaN();
    }

    @Test
    void cubicIsReadExactly() {
        double[] t = {0, 1, 3};
        double[] v = {0, 1, 27};
        double[] d = {0, 3, 27};
        assertThat(new SmoothCurve(t, v, d).at(2.5)).isEqualTo(15.625, offset(1e-12));
    }

    @Test
    void nothingIsReadFromAGap() {
        double[] t = {0, 1, 2, 3};
        double[] v = {0, Double.NaN, 2, 3};
        double[] d = {1, Double.NaN, 1, 1};
        SmoothCurve c = new SmoothCurve(t, v, d);
        assertThat(c.at(0.5)).isNaN();
        assertThat(c.firstRise(1, 0, 3)).isNaN();
        assertThat(c.firstRise(2.5, 0, 3)).isEqualTo(2.5, offset(1e-9));
    }

    @Test
    void runningMedianTakesOutAShortSlipAndLeavesARiseWhereItWas() {
        double[] t = new double[101];
        Arrays.setAll(t, i -> i * 0.01);
        double[] v = new double[101];
        Arrays.setAll(v, i -> i < 50 ? 0 : i < 60 ? (i - 50) / 10.0 : 1);
        double[] slipped = v.clone();
        slipped[20] = 9;
        slipped[21] = -9;
        slipped[22] = 9;
        SmoothCurve median = new SmoothCurve(t, slipped, new double[101]).runningMedian(0.04);
        assertThat(median.at(0.2)).isZero();
        assertThat(median.at(0.21)).isZero();
        assertThat(median.firstRise(0.5, 0, 1)).isEqualTo(0.55, offset(0.002));
        assertThat(median.start()).isZero();
    }

    @Test
    void runningMedianKeepsGaps() {
        double[] v = {1, 2, Double.NaN, 4, 5};
        SmoothCurve median = new SmoothCurve(new double[] {0, 1, 2, 3, 4}, v, new double[5]).runningMedian(1);
        assertThat(median.at(2)).isNaN();
        assertThat(median.at(0.5)).isFinite();
        assertThat(median.at(4)).isEqualTo(5, offset(1e-12));
    }

    @Test
    void theLastLongGapIsFoundAndShortOnesPassedOver() {
        double[] t = {0, 1, 2, 3, 4, 5, 6, 7, 8};
        double[] v = {0, Double.NaN, Double.NaN, Double.NaN, 0, 0, Double.NaN, 0, 0};
        SmoothCurve c = new SmoothCurve(t, v, new double[9]);
        assertThat(c.lastGapEnd(2.5, 0, 8)).isEqualTo(4);
        assertThat(c.lastGapEnd(1.5, 0, 8)).isEqualTo(7);
        assertThat(c.lastGapEnd(5, 0, 8)).isEqualTo(0);
        assertThat(c.lastGapEnd(2.5, 4, 8)).isEqualTo(4);
    }
}
