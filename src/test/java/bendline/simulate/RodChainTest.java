package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bend at rest against published values for cantilevers. */
class RodChainTest {

    private static final double EI = 100;
    private static final double L = TestRods.FREE_M;

    /** Mattiasson 1981, Int. J. Numer. Meth. Engng 17:145-153: tip of the elastica under a dead load across its root. */
    @ParameterizedTest
    @CsvSource({"1, 0.30172, 0.05643", "2, 0.49346, 0.16064", "5, 0.71379, 0.38763", "10, 0.81061, 0.55500"})
    void bendsLikeTheElastica(double alpha, double down, double back) {
        RodChain chain = new RodChain(TestRods.uniform(EI, 0.05), CastRun.LINKS);
        double[] theta = chain.atRest(0, 0, 0, -alpha * EI / (L * L));
        double[] tip = TestRods.tip(chain, theta);
        // 28 links leave about (1/28)² of the way; at the highest load the root bends within few links.
        assertThat(-tip[1] / L).isEqualTo(down, within(0.004));
        assertThat(1 - tip[0] / L).isEqualTo(back, within(0.004));
    }

    /** The same values: four times the links, a sixteenth of the error. */
    @Test
    void moreLinksComeCloser() {
        double coarse = error(14);
        double fine = error(56);
        assertThat(fine).isLessThan(coarse / 12).isLessThan(1e-3);
    }

    private static double error(int links) {
        RodChain chain = new RodChain(TestRods.uniform(EI, 0.05), links);
        double[] tip = TestRods.tip(chain, chain.atRest(0, 0, 0, -2 * EI / (L * L)));
        return Math.abs(-tip[1] / L - 0.49346);
    }

    /** Small loads: P·L³/(3·EI), textbook (Timoshenko, Strength of Materials; from memory). */
    @Test
    void bendsInProportionToASmallLoad() {
        RodChain chain = new RodChain(TestRods.uniform(EI, 0.05), CastRun.LINKS);
        double p = 0.01 * EI / (L * L);
        double[] tip = TestRods.tip(chain, chain.atRest(0, 0, 0, -p));
        assertThat(-tip[1]).isEqualTo(p * L * L * L / (3 * EI), within(2e-3 * 0.01 * L));
    }

    /** Cone with tip over root diameter c: P·L³/(3·EI₀·c) (Roark's Formulas for Stress and Strain; from memory). */
    @ParameterizedTest
    @CsvSource({"0.7", "0.5", "0.3"})
    void aConeBendsMoreByItsTaper(double c) {
        RodChain chain = new RodChain(TestRods.cone(c, EI, 0.1), 56);
        double p = 0.01 * EI * c / (L * L);
        double linear = p * L * L * L / (3 * EI * c);
        double[] tip = TestRods.tip(chain, chain.atRest(0, 0, 0, -p));
        assertThat(-tip[1]).isEqualTo(linear, within(0.006 * linear));
    }

    /** Linear limit of the elastic energy: U·L/EI = alpha²/6 (textbook, from memory). */
    @Test
    void holdsTheEnergyOfItsBend() {
        RodChain chain = new RodChain(TestRods.uniform(EI, 0.05), CastRun.LINKS);
        double alpha = 0.05;
        double[] theta = chain.atRest(0, 0, 0, -alpha * EI / (L * L));
        assertThat(chain.elasticEnergy(theta, 0) * L / EI)
                .isEqualTo(alpha * alpha / 6, within(0.01 * alpha * alpha / 6));
    }
}
