package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.filter.DefaultMeasurementModel;
import org.apache.commons.math3.filter.DefaultProcessModel;
import org.apache.commons.math3.filter.KalmanFilter;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Courses written down as formulas: a level of 5, and from a moment on away from it. */
class FreedTest {

    private static final double STEP = 1.0 / 120;
    private static final Freed.Course LEVEL = new Freed.Course(5, 1, 0.5, 0.5, 40, 40_000);
    private static final Freed.Strays FEW = new Freed.Strays(0.05, 10);
    private static final ChangePoint.Asked ASKED = new ChangePoint.Asked(0.1, 0.4, STEP, 0);

    private static ChangePoint.Samples course(double moment, double speed, double sd, Random random) {
        double[] t = IntStream.range(0, 60).mapToDouble(i -> i * STEP).toArray();
        double[] v = IntStream.range(0, 60)
                .mapToDouble(i -> 5 + speed * Math.max(0, t[i] - moment) + sd * random.nextGaussian())
                .toArray();
        double[] sds =
                IntStream.range(0, 60).mapToDouble(i -> Math.max(sd, 1e-2)).toArray();
        return new ChangePoint.Samples(t, v, sds);
    }

    @ParameterizedTest
    @ValueSource(doubles = {40, -40, 100, -15})
    void anExactCourseTellsItsMomentToAQuarterOfAStepToEitherSide(double speed) {
        ChangePoint freed = Freed.of(course(0.2537, speed, 0, new Random(1)), LEVEL, FEW, ASKED);
        assertThat(freed.at()).isCloseTo(0.2537, within(0.25 * STEP));
        assertThat(freed.before()).isEqualTo(31);
        assertThat(freed.after()).isEqualTo(29);
    }

    @Test
    void whatComesBackAfterwardsIsNoMatter() {
        ChangePoint.Samples s = course(0.25, -20, 0.05, new Random(5));
        for (int i = 0; i < 60; i++) {
            double since = Math.max(0, s.times()[i] - 0.25);
            s.values()[i] += 400 * since * since;
        }
        // Back on its level after 50 ms, and far from it on the other side at last.
        assertThat(Freed.of(s, LEVEL, FEW, ASKED).at()).isCloseTo(0.25, within(STEP));
    }

    @Test
    void someWrongSamplesBeforeItDoNotTurnItOver() {
        ChangePoint.Samples s = course(0.25, 40, 0.1, new Random(2));
        for (int i = 20; i < 23; i++) {
            s.values()[i] += 4 + i % 2;
        }
        assertThat(Freed.of(s, LEVEL, FEW, ASKED).at()).isCloseTo(0.25, within(1.5 * STEP));
    }

    @Test
    void theStatedUncertaintyHoldsTheTruthInTwoOfThree() {
        Random random = new Random(3);
        int held = 0;
        for (int k = 0; k < 300; k++) {
            double moment = 0.2 + 0.1 * random.nextDouble();
            double speed = 40 * random.nextGaussian();
            ChangePoint freed = Freed.of(course(moment, speed, 0.2, random), LEVEL, FEW, ASKED);
            held += Math.abs(freed.at() - moment) <= freed.sd() ? 1 : 0;
        }
        // 68 % of 300 are 204 ± 8; that it moves on freely afterwards is allowed for, and these never do.
        assertThat(held).isBetween(180, 255);
    }

    @Test
    void errorsThatGoOnLeaveItLessCertain() {
        ChangePoint.Samples s = course(0.25, 40, 0.2, new Random(4));
        double apart = Freed.of(s, LEVEL, FEW, ASKED).sd();
        double alike = Freed.of(s, LEVEL, FEW, new ChangePoint.Asked(0.1, 0.4, STEP, 4 * STEP))
                .sd();
        assertThat(alike).isBetween(1.2 * apart, 8 * apart);
    }

    /** What may be a stray leaves two states, each as likely as it was one or not; their middle and spread by the rules for mixtures. */
    @Test
    void aSampleThatMayBeAStrayLeavesTheStateAsUnsureAsTheTwoCasesLieApart() {
        Freed.Course c = new Freed.Course(5, 1, 0.5, 30, 1e-9, 30);
        Freed.Strays half = new Freed.Strays(0.5, 4);
        double[] y = {6.2, 5.9};
        double r = 0.5 * 0.5;
        RealMatrix p = matrix(1, 0, 0, 0.25);
        RealMatrix gain = p.multiply(matrix(1, 0, 0, 0)).scalarMultiply(1 / (1 + r));
        RealVector off = new ArrayRealVector(new double[] {y[0] - 5, 0});
        RealVector moved = gain.operate(off);
        double mine = 0.5 * new NormalDistribution(5, Math.sqrt(1 + r)).density(y[0]);
        double w = mine / (mine + 0.5 / 4);
        RealMatrix seen = p.subtract(gain.multiply(p));
        RealMatrix mixed = seen.scalarMultiply(w)
                .add(p.scalarMultiply(1 - w))
                .add(moved.outerProduct(moved).scalarMultiply(w * (1 - w)));
        RealVector state = new ArrayRealVector(new double[] {5, 0}).add(moved.mapMultiply(w));
        RealMatrix on = matrix(1, STEP, 0, 1);
        RealMatrix noise = matrix(30 * STEP * STEP * STEP / 3, 30 * STEP * STEP / 2, 30 * STEP * STEP / 2, 30 * STEP);
        RealMatrix then = on.multiply(mixed).multiply(on.transpose()).add(noise);
        double middle = on.operate(state).getEntry(0);
        double second =
                0.5 * new NormalDistribution(middle, Math.sqrt(then.getEntry(0, 0) + r)).density(y[1]) + 0.5 / 4;
        ChangePoint.Samples s = new ChangePoint.Samples(new double[] {0, STEP}, y, new double[] {0.5, 0.5});
        assertThat(Freed.logLikelihood(s, c, half, 1)).isCloseTo(Math.log((mine + 0.5 / 4) * second), within(1e-9));
    }

    @Test
    void straysOfNoShareAreRefused() {
        assertThatThrownBy(() -> new Freed.Strays(0, 4))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("0.0");
    }

    /** Without strays and kicks the walk is an ordinary Kalman filter's, for which a library of others is asked. */
    @Test
    void itsLikelihoodsAreThoseOfAnotherLibrarysFilter() {
        ChangePoint.Samples s = course(0.25, 40, 0.2, new Random(6));
        Freed.Course plain = new Freed.Course(5, 1, 0.5, 30, 1e-9, 900);
        double early = likelihood(s, plain, 0.2);
        double late = likelihood(s, plain, 0.25);
        double ratio = Freed.logLikelihood(s, plain, new Freed.Strays(1e-12, 10), 0.25)
                - Freed.logLikelihood(s, plain, new Freed.Strays(1e-12, 10), 0.2);
        assertThat(ratio).isCloseTo(late - early, within(1e-6));
    }

    private static double likelihood(ChangePoint.Samples s, Freed.Course c, double moment) {
        double log = 0;
        Array2DRowRealMatrix on = matrix(1, STEP, 0, 1);
        Array2DRowRealMatrix seen = new Array2DRowRealMatrix(new double[][] {{1, 0}});
        double[] state = {c.level(), 0};
        Array2DRowRealMatrix p = matrix(c.levelSd() * c.levelSd(), 0, 0, c.speedSd() * c.speedSd());
        for (int i = 0; i < s.times().length; i++) {
            // The noise changes at a sample, so that no step is part one and part the other.
            double q = i == 0 ? 0 : s.times()[i] <= moment + 1e-9 ? c.held() : c.free();
            Array2DRowRealMatrix noise =
                    matrix(q * STEP * STEP * STEP / 3, q * STEP * STEP / 2, q * STEP * STEP / 2, q * STEP);
            double r = s.sds()[i] * s.sds()[i];
            KalmanFilter filter = new KalmanFilter(
                    new DefaultProcessModel(
                            i == 0 ? matrix(1, 0, 0, 1) : on,
                            new Array2DRowRealMatrix(new double[][] {{0}, {0}}),
                            noise,
                            new ArrayRealVector(state),
                            p),
                    new DefaultMeasurementModel(seen, new Array2DRowRealMatrix(new double[][] {{r}})));
            filter.predict();
            double all = filter.getErrorCovariance()[0][0] + r;
            double off = s.values()[i] - filter.getStateEstimation()[0];
            log += -0.5 * (off * off / all + Math.log(2 * Math.PI * all));
            filter.correct(new double[] {s.values()[i]});
            state = filter.getStateEstimation();
            p = new Array2DRowRealMatrix(filter.getErrorCovariance());
        }
        return log;
    }

    private static Array2DRowRealMatrix matrix(double a, double b, double c, double d) {
        return new Array2DRowRealMatrix(new double[][] {{a, b}, {c, d}});
    }

    @Test
    void noSamplesTellNothingOfIt() {
        ChangePoint freed =
                Freed.of(new ChangePoint.Samples(new double[0], new double[0], new double[0]), LEVEL, FEW, ASKED);
        assertThat(freed.at()).isCloseTo(0.25, within(STEP));
        assertThat(freed.sd()).isGreaterThan(0.08);
        assertThat(freed.before() + freed.after()).isZero();
    }
}
