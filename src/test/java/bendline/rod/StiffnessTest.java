package bendline.rod;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The same blank comes out of its test curve, a still picture and its ring. */
class StiffnessTest {

    private static final Taper TAPER = new Taper(0.25, 3, 2);
    private static final Blank BLANK = new Blank(3.3, 250, 0, 0.1, 0.2, TAPER);

    /** alpha 8.678767 turns a uniform tip by 80° (computed from the closed form of the elastica). */
    @Test
    void takesTheTestCurveWhereATipLooksSquare() {
        Blank uniform = Blank.massless(2, 10, Taper.UNIFORM);
        double kg = 8.678767 * 10 / 4 / Stiffness.GRAVITY;
        assertThat(Stiffness.testCurveKg(uniform)).isEqualTo(kg, within(1e-5));
        Blank back = Stiffness.fromTestCurve(uniform, kg, 0).blank();
        assertThat(back.stiffnessNm2()).isEqualTo(10, within(1e-4));
        assertThat(back.stiffnessRelativeSd()).isBetween(0.15, 0.4);
    }

    @Test
    void takesSixteenCastingWeightsForATestCurve() {
        Blank casting = Stiffness.fromCastingWeight(BLANK, 0.08).blank();
        Blank curve = Stiffness.fromTestCurve(BLANK, 1.28, 0).blank();
        assertThat(casting.stiffnessNm2()).isEqualTo(curve.stiffnessNm2(), within(1e-9));
        assertThat(casting.stiffnessRelativeSd()).isGreaterThan(curve.stiffnessRelativeSd());
    }

    @Test
    void readsTheRing() {
        Blank soft = BLANK.withStiffness(100, 0);
        double hz = new NaturalFrequency(BLANK, 0.002).hz(1);
        Blank found = Stiffness.fromRing(soft, hz, 0.05, 0.002).blank();
        assertThat(found.stiffnessNm2()).isEqualTo(250, within(1e-6 * 250));
        assertThat(found.stiffnessRelativeSd()).isGreaterThan(0.2);
    }

    private static List<Point> picture(double kg, int count, double noise, long seed) {
        Point pull = new Point(0, -kg * Stiffness.GRAVITY);
        BlankShape shape = new Bending(BLANK).under(0.3, new Load(pull, StillBend.weight(BLANK)));
        Random random = new Random(seed);
        List<Point> out = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Point e = new Point(random.nextGaussian(), random.nextGaussian()).times(noise);
            out.add(shape.at(i * 3.3 / (count - 1)).plus(e).plus(new Point(5, 2)));
        }
        return out;
    }

    private static StillBend.Calibrated read(List<Point> points, double kg) {
        // The search starts from a blank of another stiffness and another tip.
        Blank like = BLANK.withTaper(new Taper(0.32, 3, 2)).withStiffness(120, 0);
        return new StillBend(like, new Point(0, -kg * Stiffness.GRAVITY)).read(TracedArc.through(points, 0.006));
    }

    @Test
    void readsAStillPicture() {
        StillBend.Calibrated found = read(picture(0.6, 15, 0, 1), 0.6);
        assertThat(found.blank().stiffnessNm2()).isEqualTo(250, within(0.06 * 250));
        double off = 0;
        for (int k = 0; k < 8; k++) {
            Blank b = read(picture(0.6, 15, 0.004, k), 0.6).blank();
            assertThat(Math.abs(b.stiffnessNm2() / 250 - 1)).isLessThan(2.5 * b.stiffnessRelativeSd());
            off += Math.abs(b.stiffnessNm2() / 250 - 1) / 8;
        }
        assertThat(off).isLessThan(0.08);
    }

    @Test
    void isLessSureOfFewPoints() {
        double many = read(picture(0.6, 21, 0, 1), 0.6).blank().stiffnessRelativeSd();
        double five = read(picture(0.6, 5, 0, 1), 0.6).blank().stiffnessRelativeSd();
        assertThat(five).isGreaterThan(1.5 * many);
    }

    @Test
    void refusesAPictureThatCannotTell() {
        List<Point> straight = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            straight.add(new Point(3.3 * i / 7, 0.001 * (i % 2)));
        }
        assertThatThrownBy(() -> read(straight, 0.6))
                .isInstanceOf(BendException.class)
                .hasMessageContaining("bent too little");
        assertThatThrownBy(() -> read(picture(0.6, 4, 0, 1), 0.6)).hasMessageContaining("only 4 points");
        List<Point> half = picture(0.6, 15, 0, 1).subList(0, 7);
        assertThatThrownBy(() -> read(half, 0.6)).hasMessageContaining("from the hand to the tip");
    }

    @Test
    void refusesNumbersOutOfRange() {
        assertThatThrownBy(() -> Stiffness.fromTestCurve(BLANK, 40, 0)).hasMessageContaining("test curve 40.0 kg");
        assertThatThrownBy(() -> Blank.massless(12, 100, TAPER)).hasMessageContaining("blank length 12.0 m");
        assertThatThrownBy(() -> new Taper(0, 3, 2)).hasMessageContaining("tip share");
    }
}
