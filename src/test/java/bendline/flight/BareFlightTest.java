package bendline.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rig without its line, against closed forms and published examples. Where those use another gravity, lengths are scaled. */
class BareFlightTest {

    /** Scaling: with lengths over v²/g and times over v/g a flight depends on angle, k v²/g and h g/v² only. */
    private static Flight scaled(double speed, double angleDeg, double height, double k, double gravity) {
        double s = Shots.G / gravity;
        return new Flyer(1e-9).fly(Shots.bare(speed * s, angleDeg, height * s, k / s));
    }

    private static double lengths(double gravity) {
        return gravity / Shots.G;
    }

    /** An angler's page on the physics of the cast: 150 m at 45° with g 9.8 needs 38.34 m/s and takes 5.53 s, 37.5 m high. */
    @Test
    void inAVacuumItGoesAsFarAsTheAnglersPageSays() {
        Flight f = scaled(38.3406, 45, 0, 0, 9.8);
        assertThat(f.distanceM() * lengths(9.8)).isCloseTo(150, within(0.15));
        assertThat(f.seconds()).isCloseTo(5.53283, within(0.005));
        assertThat(f.apexM() * lengths(9.8)).isCloseTo(37.5, within(0.0375));
    }

    /** Textbook formula {@code (v² cos / g)(sin + sqrt(sin² + 2 g h / v²))} with g 9.81. */
    @ParameterizedTest
    @CsvSource({"14, 38, 2.1, 21.77872", "14, 42.2712, 2.1, 21.97952", "30, 40, 3, 93.79332", "30, 44.0927, 3, 94.69561"
    })
    void inAVacuumFromAHeightItGoesAsFarAsTheFormula(double v, double angle, double h, double range) {
        assertThat(scaled(v, angle, h, 0, 9.81).distanceM() * lengths(9.81)).isCloseTo(range, within(1e-5 * range));
    }

    /** Quadratic drag from 45° on level ground, lengths over v²/g; worked out independently by another program to 1e-11. */
    @ParameterizedTest
    @CsvSource({
        "0, 1.000000, 1.414214, 0.250000, 45.000, 1.000000",
        "0.05, 0.962578, 1.399680, 0.244901, 46.006, 0.963093",
        "0.10, 0.928381, 1.385759, 0.240089, 46.944, 0.930233",
        "0.25, 0.841222, 1.347257, 0.227117, 49.417, 0.849890",
        "0.50, 0.732009, 1.291974, 0.209274, 52.687, 0.755120",
        "1.00, 0.589012, 1.204725, 0.182764, 57.273, 0.638227",
        "2.00, 0.433996, 1.083738, 0.149007, 62.687, 0.515673",
        "5.00, 0.255979, 0.888485, 0.101447, 69.710, 0.368980"
    })
    void withDragItFliesAsTheTable(
            double eps, double range, double time, double apex, double landingDeg, double landingSpeed) {
        double v = 30;
        double length = v * v / Shots.G;
        Flight f = new Flyer(1e-9).fly(Shots.bare(v, 45, 0, eps / length));
        assertThat(f.distanceM() / length).isCloseTo(range, within(1e-5));
        assertThat(f.seconds() * Shots.G / v).isCloseTo(time, within(1e-5));
        assertThat(f.apexM() / length).isCloseTo(apex, within(1e-5));
        assertThat(Math.toDegrees(f.landingRad())).isCloseTo(landingDeg, within(1e-3));
        assertThat(f.landingMps() / v).isCloseTo(landingSpeed, within(1e-5));
    }

    /** Straight up with drag: apex {@code vt²/(2g) ln(1 + v²/vt²)}, return speed {@code v / sqrt(1 + v²/vt²)} (textbook). */
    @Test
    void straightUpItComesBackAsTheFormulaSays() {
        double vt = 34.7;
        Flight f = new Flyer(1e-10).fly(Shots.bare(40, 90, 0, Shots.G / (vt * vt)));
        assertThat(f.apexM()).isCloseTo(51.8976, within(1e-4));
        assertThat(f.landingMps()).isCloseTo(26.2116, within(1e-4));
        assertThat(f.distanceM()).isCloseTo(0, within(1e-9));
    }

    /** A falling rig nears its terminal speed, sqrt(g/k); a baseball's is 34.7 m/s (published). */
    @Test
    void fallingItReachesItsTerminalSpeed() {
        double vt = 15;
        Flight f = new Flyer().fly(Shots.bare(40, 85, 60, Shots.G / (vt * vt)));
        assertThat(f.landingMps()).isCloseTo(vt, within(0.01 * vt));
    }

    /** Taylor, Classical Mechanics, example 2.6: a baseball at 30 m/s and 50° goes some 59 m, in a vacuum some 90 m. */
    @Test
    void aBaseballGoesAsFarAsInTheTextbook() {
        assertThat(scaled(30, 50, 0, 0.0081667, 9.8).distanceM() * lengths(9.8)).isCloseTo(58.119, within(0.06));
        assertThat(scaled(30, 50, 0, 0, 9.8).distanceM() * lengths(9.8)).isCloseTo(90.442, within(0.01));
    }

    /** Inputs from a university page (b 0.0025 1/m, 60 m/s, g 9.8), answers worked out independently; 40° beats 45°. */
    @ParameterizedTest
    @CsvSource({
        "60, 0.0025, 10, 104.595",
        "60, 0.0025, 20, 171.952",
        "60, 0.0025, 30, 210.588",
        "60, 0.0025, 35, 220.528",
        "60, 0.0025, 40, 224.675",
        "60, 0.0025, 45, 223.273",
        "35, 0.002, 42, 105.092"
    })
    void theUniversityPagesShotsGoAsFar(double v, double b, double angle, double range) {
        assertThat(scaled(v, angle, 0, b, 9.8).distanceM() * lengths(9.8)).isCloseTo(range, within(1e-3));
    }

    /** A flat shot: {@code x = ln(1 + k v cos t) / k} (textbook). */
    @Test
    void aFlatShotFollowsTheLogarithm() {
        Flight f = new Flyer(1e-9).fly(Shots.bare(40, 10, 0, 0.004));
        double c = Math.cos(Math.toRadians(10));
        assertThat(f.distanceM())
                .isCloseTo(Math.log(1 + 0.004 * 40 * c * f.seconds()) / 0.004, within(0.02 * f.distanceM()));
    }

    /** Typical rigs without line, h 3 m, 40°: worked out independently with the drag constants k given. */
    @ParameterizedTest
    @CsvSource({
        "0.00902, 25, 47.5", "0.00902, 30, 60.4", "0.00902, 35, 73.0", "0.00902, 40, 84.9", "0.00902, 50, 106.6",
        "0.00176, 25, 61.2", "0.00176, 30, 84.0", "0.00176, 35, 109.3", "0.00176, 40, 136.4", "0.00176, 50, 194.0",
        "0.00143, 25, 62.0", "0.00143, 50, 202.7", "0.00129, 25, 62.4", "0.00129, 50, 206.5"
    })
    void typicalRigsGoAsFar(double k, double v, double range) {
        assertThat(Shots.distance(Shots.bare(v, 40, 3, k))).isCloseTo(range, within(0.005 * range));
    }

    /** The longest casts on record, 281.75 m with 150 g, need 52.6 m/s in a vacuum at 45°. */
    @Test
    void theRecordNeedsAsMuchSpeedAsWorkedOut() {
        assertThat(Shots.distance(Shots.bare(52.57, 45, 0, 0))).isCloseTo(281.75, within(0.5));
    }

    @Test
    void finerStepsChangeNothingThatMatters() {
        double coarse = new Flyer().fly(Shots.strong()).distanceM();
        double fine = new Flyer(1e-10).fly(Shots.strong()).distanceM();
        assertThat(coarse).isCloseTo(fine, within(0.005));
    }
}
