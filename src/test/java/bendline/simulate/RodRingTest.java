package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bare rod rings at the published natural frequencies of cantilevers. */
class RodRingTest {

    private static final double EI = 100;
    private static final double MASS = 0.08;
    private static final double DT = 2e-4;

    /** Clamped and free, the same section all along: (β₁L)² = 3.516015 (Blevins; Timoshenko). */
    @Test
    void aUniformRodRingsAtItsFirstFrequency() {
        assertThat(squaredBeta(TestRods.uniform(EI, MASS))).isEqualTo(3.516015, within(0.01));
    }

    /**
     * Round and tapered both ways, referred to the root: International Journal of Mechanical and Materials Engineering
     * 2015, doi 10.1186/s40712-015-0040-0, table 1 (after Ozdemir Ozgumus and Kaya); its taper is 1 − tip over root.
     */
    @ParameterizedTest
    @CsvSource({"0.8, 3.85512", "0.6, 4.31878", "0.4, 5.00903"})
    void aTaperedRodRingsAtItsFirstFrequency(double tipShare, double squared) {
        assertThat(squaredBeta(TestRods.cone(tipShare, EI, MASS))).isEqualTo(squared, within(0.006 * squared));
    }

    /** 2·π·f·√(m'L⁴/EI) from the time of whole swings after a small bend is let go. */
    private static double squaredBeta(RodSpec rod) {
        RodChain chain = new RodChain(rod, CastRun.LINKS);
        RigLine line = new RigLine(RigSpec.feeder(80, 1));
        line.become(RigLine.State.LYING);
        ChainStepper stepper = new ChainStepper(chain, line, RigSpec.feeder(80, 1), 0, DT);
        double[] bent = chain.atRest(0, 0, 0, -0.02 * EI / (TestRods.FREE_M * TestRods.FREE_M));
        System.arraycopy(bent, 0, stepper.state().theta, 0, bent.length);
        HandPose hand = TestRods.still(0);
        double first = Double.NaN;
        double last = Double.NaN;
        int swings = -1;
        double before = stepper.tip(hand)[1];
        for (int i = 0; i < 4 / DT && swings < 6; i++) {
            stepper.step(hand);
            double now = stepper.tip(hand)[1];
            if (before < 0 && now >= 0) {
                last = (i + before / (before - now)) * DT;
                first = swings < 0 ? last : first;
                swings++;
            }
            before = now;
        }
        double frequency = swings / (last - first);
        double l2 = TestRods.FREE_M * TestRods.FREE_M;
        return 2 * Math.PI * frequency * Math.sqrt(MASS * l2 * l2 / EI);
    }
}
