package bendline.rod;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Natural frequencies of cantilevers against published tables. */
class NaturalFrequencyTest {

    private static NaturalFrequency of(Taper taper, double tipMassShare) {
        Blank b = new Blank(2, 50, 0, 0.1, 0, taper);
        return new NaturalFrequency(b, tipMassShare * b.massKg());
    }

    /** Roots of cos b · cosh b + 1 = 0 (tables of Blevins and of Timoshenko, from memory; recomputed). */
    @ParameterizedTest
    @CsvSource({"1, 1.875104069", "2, 4.694091133", "3, 7.854757438", "4, 10.995540735", "5, 14.137168391"})
    void ringsLikeAUniformBeam(int mode, double beta) {
        assertThat(of(Taper.UNIFORM, 0).betaL(mode)).isEqualTo(beta, within(1e-8));
    }

    /** Squares and the ratio of the second to the first; the first three stand in IJMME 2015, 10.1186/s40712-015-0040-0, table 1. */
    @ParameterizedTest
    @CsvSource({"1, 3.516015", "2, 22.034492", "3, 61.697214", "4, 120.901916"})
    void hasThePublishedSquares(int mode, double square) {
        double beta = of(Taper.UNIFORM, 0).betaL(mode);
        assertThat(beta * beta).isEqualTo(square, within(6e-7));
    }

    @Test
    void saysTheFrequencyInHertz() {
        NaturalFrequency f = of(Taper.UNIFORM, 0);
        double first = 3.516015 / (2 * Math.PI) * Math.sqrt(50 / (0.1 * 16));
        assertThat(f.hz(1)).isEqualTo(first, within(1e-6));
        assertThat(f.hz(2) / f.hz(1)).isEqualTo(6.26689, within(5e-6));
    }

    /** Tip mass over beam mass against 1 + cos b cosh b + mu·b·(cos b sinh b − sin b cosh b) = 0 (from memory; recomputed). */
    @ParameterizedTest
    @CsvSource({
        "0.05, 1, 1.791171",
        "0.1, 1, 1.722742",
        "0.25, 1, 1.573751",
        "0.5, 1, 1.419964",
        "1, 1, 1.247917",
        "1, 2, 4.031139",
        "2, 1, 1.076196",
        "5, 1, 0.870021",
        "10, 1, 0.735782"
    })
    void ringsSlowerWithAMassOnItsTip(double share, int mode, double beta) {
        assertThat(of(Taper.UNIFORM, share).betaL(mode)).isEqualTo(beta, within(1e-6));
    }

    /**
     * Rayleigh's one mass, 33/140 of the beam at its tip, is always high by so much (formula from memory; errors from the
     * frequencies above: 1.722742 at a share of 0.1 makes 0.72 %).
     */
    @ParameterizedTest
    @CsvSource({
        "0, 0.0147, 0.00005",
        "0.1, 0.00725, 0.00005",
        "0.5, 0.0015, 0.00005",
        "1, 0.0005, 0.00005",
        "5, 0.00003, 0.000006"
    })
    void liesUnderRayleighsOneMass(double share, double over, double digits) {
        double exact = of(Taper.UNIFORM, share).betaL(1);
        double one = Math.sqrt(3 / (share + 33.0 / 140));
        assertThat(one / (exact * exact) - 1).isEqualTo(over, within(digits));
    }

    /** The mass 0.2427 that is right for the bare beam, with a mass on its tip (formula from memory, errors computed). */
    @ParameterizedTest
    @CsvSource({"0, -0.00006", "0.1, -0.0031", "0.2, -0.0037", "0.25, -0.0037", "1, -0.0023"})
    void liesAboveTheBareBeamsOneMass(double share, double over) {
        double exact = of(Taper.UNIFORM, share).betaL(1);
        double one = Math.sqrt(3 / (share + 0.2427));
        assertThat(one / (exact * exact) - 1).isEqualTo(over, within(0.00006));
    }

    /**
     * Round and wedge tapers, squares on the root's section: 200 Hermite elements, which agree with table 1 of IJMME 2015,
     * 10.1186/s40712-015-0040-0, to the digits given there (its taper is 1 less the tip over the root).
     */
    @ParameterizedTest
    @CsvSource({
        "1.0, 4, 2, 3.51602, 22.0345, 61.6972",
        "0.8, 4, 2, 3.85514, 21.0568, 56.6303",
        "0.6, 4, 2, 4.31880, 20.0500, 51.3346",
        "0.5, 4, 2, 4.62513, 19.5476, 48.5789",
        "0.4, 4, 2, 5.00904, 19.0649, 45.7384",
        "0.3, 4, 2, 5.50924, 18.6412, 42.8104",
        "0.2, 4, 2, 6.19638, 18.3855, 39.8336",
        "0.8, 3, 1, 3.60824, 20.6210, 56.1923",
        "0.2, 3, 1, 4.29247, 15.7427, 36.8846"
    })
    void ringsLikeTaperedBeams(double tip, double stiff, double heavy, double one, double two, double three) {
        NaturalFrequency f = of(new Taper(tip, stiff, heavy), 0);
        assertThat(Math.pow(f.betaL(1), 2)).isEqualTo(one, within(1e-4));
        assertThat(Math.pow(f.betaL(2), 2)).isEqualTo(two, within(1e-4));
        assertThat(Math.pow(f.betaL(3), 2)).isEqualTo(three, within(1e-4));
    }

    /**
     * Cone and wedge that run out to a point (Kirchhoff 1879; Conway and Dubil 1965, from memory): a tip of a thousandth is as
     * near as this program goes, hence the width.
     */
    @ParameterizedTest
    @CsvSource({"4, 2, 8.71925, 21.1457, 38.4538", "3, 1, 5.31509, 15.2072, 30.0198"})
    void comesNearThePointedBeams(double stiff, double heavy, double one, double two, double three) {
        NaturalFrequency f = of(new Taper(0.001, stiff, heavy), 0);
        assertThat(Math.pow(f.betaL(1), 2)).isEqualTo(one, within(0.002 * one));
        assertThat(Math.pow(f.betaL(2), 2)).isEqualTo(two, within(0.0025 * two));
        assertThat(Math.pow(f.betaL(3), 2)).isEqualTo(three, within(0.0025 * three));
    }
}
