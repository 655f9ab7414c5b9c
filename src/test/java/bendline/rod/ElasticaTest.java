package bendline.rod;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Circle;
import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A cantilever under a dead load across its root: the elastica, alpha = P·L²/EI. */
class ElasticaTest {

    private static final double L = 2.5;
    private static final double EI = 40;

    private static BlankShape bent(Taper taper, double alpha, int steps) {
        Load load = Load.atTip(new Point(0, alpha * EI / (L * L)));
        return new Bending(Blank.massless(L, EI, taper), steps).under(0, load);
    }

    /**
     * Deflection, shortening, slope, root curvature, chord, its direction, sagitta and energy. Computed from the elliptic
     * integrals of Bisshopp and Drucker 1945 (Quart. Appl. Math. 3:272-275) and checked by an independent integration of the
     * differential equation; 1e-6, the digits that the table has.
     */
    @ParameterizedTest
    @CsvSource({
        "0.10, 0.033295, 0.999335, 0.049954, 2.8622, 0.099933, 0.999889, 1.9082, 0.006408, 0.423, 0.001664",
        "0.25, 0.082746, 0.995882, 0.124292, 7.1214, 0.248971, 0.999314, 4.7497, 0.015935, 0.423, 0.010307",
        "0.50, 0.162144, 0.984081, 0.244534, 14.0107, 0.492041, 0.997350, 9.3564, 0.031287, 0.422, 0.039980",
        "0.80, 0.249452, 0.961834, 0.379063, 21.7187, 0.769468, 0.993656, 14.5393, 0.048307, 0.422, 0.096479",
        "1.00, 0.301721, 0.943567, 0.461352, 26.4335, 0.943567, 0.990633, 17.7325, 0.058597, 0.421, 0.143438",
        "1.50, 0.410978, 0.892058, 0.639540, 36.6429, 1.338088, 0.982177, 24.7359, 0.080427, 0.419, 0.278772",
        "2.00, 0.493457, 0.839358, 0.781750, 44.7910, 1.678717, 0.973665, 30.4512, 0.097239, 0.417, 0.422130",
        "3.00, 0.603253, 0.745580, 0.986017, 56.4946, 2.236739, 0.959064, 38.9765, 0.119964, 0.413, 0.691741",
        "4.00, 0.669964, 0.671059, 1.121239, 64.2423, 2.684235, 0.948247, 44.9532, 0.133611, 0.408, 0.922702",
        "5.00, 0.713792, 0.612372, 1.215368, 69.6355, 3.061858, 0.940477, 49.3732, 0.142080, 0.404, 1.118530",
        "7.00, 0.767369, 0.527073, 1.334960, 76.4876, 3.689508, 0.930946, 55.5165, 0.150811, 0.395, 1.434651",
        "10.0, 0.810609, 0.445004, 1.430286, 81.9493, 4.450044, 0.924725, 61.2343, 0.154612, 0.382, 1.795356"
    })
    void meetsTheWholeTable(
            double alpha,
            double down,
            double along,
            double turn,
            double turnDeg,
            double curvature,
            double chord,
            double chordDeg,
            double sagitta,
            double sagittaAt,
            double energy) {
        BlankShape s = bent(Taper.UNIFORM, alpha, Bending.STEPS);
        assertThat(s.tip().y() / L).isEqualTo(down, within(1e-6));
        assertThat(s.tip().x() / L).isEqualTo(along, within(1e-6));
        assertThat(s.tipTurn()).isEqualTo(turn, within(1e-6));
        assertThat(Math.toDegrees(s.tipTurn())).isEqualTo(turnDeg, within(6e-5));
        assertThat(s.curvature(0) * L).isEqualTo(curvature, within(1e-6));
        assertThat(s.chordRatio()).isEqualTo(chord, within(1e-6));
        assertThat(Math.toDegrees(s.tip().angle())).isEqualTo(chordDeg, within(6e-5));
        assertThat(s.energyJ() * L / EI).isEqualTo(energy, within(1e-6));
        double[] most = sagitta(s);
        assertThat(most[0]).isEqualTo(sagitta, within(1e-6));
        assertThat(most[1]).isEqualTo(sagittaAt, within(6e-4));
    }

    /** Largest distance from the chord over L, and where. */
    private static double[] sagitta(BlankShape s) {
        Point along = s.tip().times(1 / s.tip().norm());
        double most = 0;
        double at = 0;
        for (double u = 0; u <= 1; u += 1e-4) {
            double away = Math.abs(along.cross(s.at(u * L))) / L;
            if (away > most) {
                most = away;
                at = u;
            }
        }
        return new double[] {most, at};
    }

    /**
     * The closed form with elliptic integrals from a general-purpose library (Hipparchus, Apache-2.0), at loads that the table
     * does not have. Its functions take the parameter m = p².
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.03, 0.37, 0.9, 1.77, 3.3, 6.1, 9.4})
    void meetsTheClosedForm(double alpha) {
        double turn = turnOf(alpha);
        double p = Math.sqrt(0.5 * (1 + Math.sin(turn)));
        double f = Math.asin(1 / (p * Math.sqrt(2)));
        double m = p * p;
        double e = LegendreEllipticIntegral.bigE(m) - LegendreEllipticIntegral.bigE(f, m);
        BlankShape s = bent(Taper.UNIFORM, alpha, Bending.STEPS);
        assertThat(s.tipTurn()).isEqualTo(turn, within(1e-7));
        assertThat(s.tip().y() / L).isEqualTo(1 - 2 * e / Math.sqrt(alpha), within(1e-7));
        assertThat(s.tip().x() / L).isEqualTo(Math.sqrt(2 * Math.sin(turn) / alpha), within(1e-7));
    }

    private static double turnOf(double alpha) {
        double low = 1e-6;
        double high = Math.PI / 2 - 1e-12;
        for (int i = 0; i < 100; i++) {
            double mid = 0.5 * (low + high);
            low = alphaOf(mid) < alpha ? mid : low;
            high = alphaOf(mid) < alpha ? high : mid;
        }
        return 0.5 * (low + high);
    }

    private static double alphaOf(double turn) {
        double m = 0.5 * (1 + Math.sin(turn));
        double f = Math.asin(1 / Math.sqrt(2 * m));
        double root = LegendreEllipticIntegral.bigK(m) - LegendreEllipticIntegral.bigF(f, m);
        return root * root;
    }

    /** Mattiasson 1981, Int. J. Numer. Meth. Engng 17:145-153; the row of alpha 10 as quoted in a public test file, the others from memory. */
    @ParameterizedTest
    @CsvSource({"1, 0.30172, 0.05643", "2, 0.49346, 0.16064", "5, 0.71379, 0.38763", "10, 0.81061, 0.55500"})
    void meetsMattiasson(double alpha, double down, double back) {
        BlankShape s = bent(Taper.UNIFORM, alpha, Bending.STEPS);
        assertThat(s.tip().y() / L).isEqualTo(down, within(1e-5));
        assertThat(1 - s.tip().x() / L).isEqualTo(back, within(1e-5));
    }

    /** Linear limit: down alpha/3, turn alpha/2, energy alpha²/6 (textbook, from memory). */
    @Test
    void meetsTheLinearLimit() {
        BlankShape s = bent(Taper.UNIFORM, 1e-3, Bending.STEPS);
        assertThat(s.tip().y() / L).isEqualTo(1e-3 / 3, within(1e-9));
        assertThat(s.tipTurn()).isEqualTo(1e-3 / 2, within(1e-9));
        assertThat(s.energyJ() * L / EI).isEqualTo(1e-6 / 6, within(1e-12));
    }

    /** How much the linear formula over-predicts, computed from the closed form. */
    @ParameterizedTest
    @CsvSource({"0.2, 0.005, 0.0005", "1, 0.105, 0.0005", "2, 0.35, 0.005"})
    void bendsLessThanTheLinearFormula(double alpha, double over, double digits) {
        double down = bent(Taper.UNIFORM, alpha, Bending.STEPS).tip().y() / L;
        assertThat(alpha / 3 / down - 1).isEqualTo(over, within(digits));
    }

    /** From the tip's angle to the load, computed from the closed form; 1e-5 of the angle's load. */
    @ParameterizedTest
    @CsvSource({
        "10, 0.353003",
        "20, 0.730592",
        "30, 1.162640",
        "45, 2.014467",
        "60, 3.405410",
        "75, 6.459535",
        "80, 8.678767",
        "85, 13.233266"
    })
    void turnsTheTipUnderItsLoad(double degrees, double alpha) {
        double before =
                Math.toDegrees(bent(Taper.UNIFORM, alpha * (1 - 1e-5), 400).tipTurn());
        double after =
                Math.toDegrees(bent(Taper.UNIFORM, alpha * (1 + 1e-5), 400).tipTurn());
        assertThat(degrees).isBetween(before, after);
    }

    /** Bisshopp and Drucker's chart at alpha 3, as read in a public test note: 0.6 and 0.76, chart accuracy. */
    @Test
    void meetsTheChart() {
        BlankShape s = bent(Taper.UNIFORM, 3, Bending.STEPS);
        assertThat(s.tip().y() / L).isEqualTo(0.6, within(0.02));
        assertThat(s.tip().x() / L).isEqualTo(0.76, within(0.02));
    }

    /**
     * Cones, EI falling as the fourth power of the diameter, alpha of the root: computed by shooting with an adaptive
     * integrator, not by this program; 1e-5.
     */
    @ParameterizedTest
    @CsvSource({
        "0.5, 0.5, 0.291346, 0.938470, 33.8666",
        "0.5, 1, 0.458631, 0.838761, 54.3145",
        "0.3, 0.25, 0.242185, 0.949966, 37.0225",
        "0.3, 0.5, 0.383447, 0.870352, 58.1577",
        "0.2, 0.25, 0.301048, 0.907662, 58.0392",
        "0.2, 0.5, 0.425020, 0.815554, 76.3439"
    })
    void bendsConesLikeTheShooting(double tip, double alpha, double down, double along, double degrees) {
        BlankShape s = bent(Taper.cone(tip), alpha, Bending.STEPS);
        assertThat(s.tip().y() / L).isEqualTo(down, within(1e-5));
        assertThat(s.tip().x() / L).isEqualTo(along, within(1e-5));
        assertThat(Math.toDegrees(s.tipTurn())).isEqualTo(degrees, within(1e-3));
    }

    /** Small loads on a cone: P·L³/(3·EI₀·c) (Roark's Formulas for Stress and Strain, from memory). */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.35, 0.5, 0.8, 1})
    void bendsConesInProportionToSmallLoads(double tip) {
        double alpha = 1e-4;
        BlankShape s = bent(Taper.cone(tip), alpha, 400);
        assertThat(s.tip().y() / L / alpha).isEqualTo(1 / (3 * tip), within(2e-6 / tip));
    }

    /** Howell 2001, Compliant Mechanisms, ch. 5, pseudo-rigid body with 0.8517 and 2.676 (from memory), against the elastica. */
    @ParameterizedTest
    @CsvSource({"1, -0.030", "2, -0.009", "3, 0.002"})
    void liesWhereThePseudoRigidBodySays(double alpha, double off) {
        double low = 0;
        double high = Math.PI / 2;
        for (int i = 0; i < 60; i++) {
            double mid = 0.5 * (low + high);
            boolean more = alpha * Math.cos(mid) > 2.676 * mid;
            low = more ? mid : low;
            high = more ? high : mid;
        }
        double down = bent(Taper.UNIFORM, alpha, Bending.STEPS).tip().y() / L;
        assertThat(0.8517 * Math.sin(low) / down - 1).isEqualTo(off, within(0.005));
    }

    /** A couple alone bends it to an arc of a circle, kL = M·L/EI: exact (textbook, from memory). */
    @ParameterizedTest
    @CsvSource({
        "1, 0.841470985, 0.459697694, 0.958851077, 0.127670961",
        "1.5707963267948966, 0.636619772, 0.636619772, 0.900316316, 0.207106781",
        "3.141592653589793, 0, 0.636619772, 0.636619772, 0.5"
    })
    void bendsToACircleUnderACouple(double turn, double along, double down, double chord, double sagittaOfChord) {
        Load couple = new Load(new Point(0, 0), turn * EI / L, List.of());
        BlankShape s = new Bending(Blank.massless(L, EI, Taper.UNIFORM)).under(0, couple);
        assertThat(s.tipTurn()).isEqualTo(turn, within(1e-9));
        assertThat(s.tip().x() / L).isEqualTo(along, within(2e-9));
        assertThat(s.tip().y() / L).isEqualTo(down, within(2e-9));
        assertThat(s.chordRatio()).isEqualTo(chord, within(2e-9));
        assertThat(sagitta(s)[0] / chord).isEqualTo(sagittaOfChord, within(1e-6));
        assertThat(s.energyJ() * L / EI).isEqualTo(0.5 * turn * turn, within(1e-9));
    }

    /** The same arcs at 1 px a four-hundredth of their length, each point half a pixel off: the radius within 0.5 %. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1.5707963267948966, 3.141592653589793})
    void isReadAsACircle(double turn) {
        Load couple = new Load(new Point(0, 0), turn * EI / L, List.of());
        BlankShape s = new Bending(Blank.massless(L, EI, Taper.UNIFORM)).under(0, couple);
        Random random = new Random(3);
        List<Point> seen = new ArrayList<>();
        for (int i = 0; i <= 100; i++) {
            Point e = new Point(random.nextGaussian(), random.nextGaussian()).times(0.5);
            seen.add(s.at(i * L / 100).times(400 / L).plus(e));
        }
        assertThat(Circle.through(seen).radius() * turn / 400).isEqualTo(1, within(0.005));
    }
}
