package bendline.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Air, wind and drag against their tables. */
class AirTest {

    /** ISO 2533 and US Standard Atmosphere 1976, sea level. */
    @Test
    void standardAirIsThatOfTheStandard() {
        assertThat(Air.STANDARD.densityKgPerM3()).isCloseTo(1.225, within(1e-4));
        assertThat(Air.STANDARD.viscosityPaS()).isCloseTo(1.78938e-5, within(1e-9));
        assertThat(Air.STANDARD.kinematicViscosity()).isCloseTo(1.46072e-5, within(1e-9));
    }

    /** Dry air at 1013.25 hPa, handbook values. */
    @ParameterizedTest
    @CsvSource({"0, 1.2923", "20, 1.2041", "30, 1.1644"})
    void warmAirIsThinner(double celsius, double density) {
        assertThat(Air.at(celsius, 101_325).densityKgPerM3()).isCloseTo(density, within(1e-4));
    }

    /** Shares of the wind at 10 m: published exponents 1/7, 0.11 and 0.20 (IEC 61400-1). */
    @ParameterizedTest
    @CsvSource({
        "0.142857142857, 2, 0.7946",
        "0.11, 2, 0.8377",
        "0.2, 2, 0.7248",
        "0.142857142857, 5, 0.9057",
        "0.11, 5, 0.9266",
        "0.2, 5, 0.8706",
        "0.142857142857, 30, 1.1699",
        "0.11, 30, 1.1285",
        "0.2, 30, 1.2457"
    })
    void windGrowsByThePowerLaw(double exponent, double height, double share) {
        assertThat(new Wind.Power(10, exponent).share(height)).isCloseTo(share, within(1e-4));
    }

    /** A textbook exercise: 2 m/s at 10 m, exponent 0.15. */
    @Test
    void aTextbookExerciseComesOut() {
        assertThat(2 * new Wind.Power(10, 0.15).share(100)).isCloseTo(2.825, within(1e-3));
        assertThat(2 * new Wind.Power(10, 0.15).share(300)).isCloseTo(3.331, within(1e-3));
    }

    /** Log law: calm sea 0.0002 m, grass 0.03 m. */
    @ParameterizedTest
    @CsvSource({"0.0002, 2, 0.8513", "0.03, 2, 0.7229", "0.0002, 30, 1.1015", "0.03, 30, 1.1891"})
    void windGrowsByTheLogarithm(double roughness, double height, double share) {
        assertThat(new Wind.Logarithmic(10, roughness).share(height)).isCloseTo(share, within(1e-4));
    }

    @Test
    void windComesFromWhereItIsSaidTo() {
        Wind head = Wind.from(5, 0, Wind.Profile.OVER_WATER);
        assertThat(head.alongMps()).isCloseTo(-5, within(1e-12));
        Wind right = Wind.from(5, 90, Wind.Profile.OVER_WATER);
        assertThat(right.acrossMps()).isCloseTo(-5, within(1e-12));
        assertThatThrownBy(() -> new Wind(90, 0, Wind.Profile.OVER_WATER)).hasMessageContaining("wind");
    }

    /** Aeronautical Engineer's Data Book, figure 5.13(b). */
    @ParameterizedTest
    @CsvSource({"1, 0.91, 0.63", "2, 0.85, 0.68"})
    void cylindersDragAsTheDataBookSays(double slender, double endOn, double broadside) {
        assertThat(DragTables.cylinderEndOn(slender)).isCloseTo(endOn, within(1e-12));
        assertThat(DragTables.cylinderBroadside(slender)).isCloseTo(broadside, within(1e-12));
        assertThat(DragTables.cylinderEndOn(4)).isCloseTo(0.87, within(1e-12));
        assertThat(DragTables.cylinderEndOn(7)).isCloseTo(0.99, within(1e-12));
        assertThat(DragTables.cylinderBroadside(10)).isCloseTo(0.82, within(1e-12));
        assertThat(DragTables.cylinderBroadside(40)).isCloseTo(0.98, within(1e-12));
        assertThat(DragTables.cylinderBroadside(3.5)).isCloseTo(0.71, within(1e-12));
    }

    /** Clift and Gauvin's sphere, values worked out independently. */
    @ParameterizedTest
    @CsvSource({"1, 27.60", "10, 4.151", "100, 1.094", "1e3, 0.4662", "1e4, 0.4167", "5e4, 0.4873", "1e5, 0.4918"})
    void spheresDragAsTheirFormula(double reynolds, double drag) {
        assertThat(DragTables.sphere(reynolds)).isCloseTo(drag, within(1e-3 * drag));
    }

    /** The drag of a bomb is taken as a ball's, which at its speed is within a tenth of the sphere formula. */
    @Test
    void aBombDragsLikeABall() {
        Rig bomb = Rig.bomb(0.112);
        double d = 1.05 * Math.cbrt(6 * 0.112 / (Math.PI * 11_340));
        double atForty = DragTables.sphere(40 * d / Air.STANDARD.kinematicViscosity());
        assertThat(bomb.dragAreaM2()).isCloseTo(atForty * Math.PI / 4 * d * d, within(0.1 * bomb.dragAreaM2()));
    }

    @Test
    void aTumblingFeederShowsBothSidesAndAStemOnlyItsEnd() {
        Rig f = Rig.feeder(0.074, 0.022, 0.044, false);
        double end = 0.85 * Math.PI / 4 * 0.022 * 0.022;
        double side = 0.68 * 0.022 * 0.044;
        assertThat(f.dragAreaM2()).isCloseTo(2 / Math.PI * (end + side), within(1e-12));
        assertThat(f.withStem().dragAreaM2()).isCloseTo(end, within(1e-12));
        assertThat(Rig.feeder(0.074, 0.022, 0.044, true).dragAreaM2()).isGreaterThan(f.dragAreaM2());
    }
}
