package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A rod that swings a degree a frame and is not sure in one of them. */
class RegainedTest {

    private static final double FREE = 300;
    private static final Point HAND = new Point(320, 420);
    private static final RodLength.Estimate ROD = new RodLength.Estimate(FREE, 6, 1);
    private static final int DOUBTFUL = 10;

    private static Fit fit(double degrees, double outer, double alongSd) {
        Point unit = Point.direction(-Math.toRadians(degrees));
        Polyline line = new Polyline(List.of(HAND.plus(unit.times(15)), HAND.plus(unit.times(outer)))).resampled(40);
        return new Fit(line, 0.3, alongSd, 0.01, 2, 1000, 0.95, 0);
    }

    private static List<Look> looks(List<Fit> choices) {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < 21; t++) {
            Fit seen = fit(50 + t, FREE, 1);
            out.add(t == DOUBTFUL ? new Look(t / 60.0, choices, null) : new Look(t / 60.0, List.of(seen), seen));
        }
        return out;
    }

    private static Plane picture(double degrees) {
        return picture(degrees, 0);
    }

    /** @param linePx of bright line straight on from the dark rod's tip */
    private static Plane picture(double degrees, double linePx) {
        int w = 640;
        int h = 480;
        Random noise = new Random(5);
        Point unit = Point.direction(-Math.toRadians(degrees));
        float[] values = new float[w * h];
        for (int i = 0; i < values.length; i++) {
            Point p = new Point(i % w + 0.5, i / w + 0.5).minus(HAND);
            double out = Math.abs(p.cross(unit)) < 1.5 ? p.dot(unit) : -1;
            double level = out <= 0 || out > FREE + linePx ? 0 : out < FREE ? -20 : 14;
            values[i] = (float) (noise.nextGaussian() + level);
        }
        return new Plane(w, h, values);
    }

    private static Regained regained(Plane plane) {
        return new Regained(t -> plane, new BlankFitter(480, HAND, FREE), HAND, ROD);
    }

    private static final Plane NOTHING = new Plane(640, 480, new float[640 * 480]);

    @Test
    void aCurveWhoseEndIsVagueIsTakenWhereItsNeighboursExpectIt() {
        Fit vague = fit(60.2, FREE - 18, 9);
        assertThat(Confidence.sure(vague)).isFalse();
        List<Look> filled = regained(NOTHING).filled(looks(List.of(fit(75, FREE, 1), vague)));
        Fit taken = Objects.requireNonNull(filled.get(DOUBTFUL).chosen());
        assertThat(taken.line().last().distance(vague.line().last())).isLessThan(25);
        assertThat(taken.line().tangentAt(100).angle()).isCloseTo(-Math.toRadians(60.2), offset());
    }

    @Test
    void oneThatLiesElsewhereIsNot() {
        assertThat(regained(NOTHING)
                        .filled(looks(List.of(fit(75, FREE, 1), fit(60, FREE - 90, 9))))
                        .get(DOUBTFUL)
                        .chosen())
                .isNull();
    }

    @Test
    void whatTheSearchMissedIsLookedForAnew() {
        List<Look> filled = regained(picture(60)).filled(looks(List.of()));
        Fit taken = Objects.requireNonNull(filled.get(DOUBTFUL).chosen());
        assertThat(taken.line().last().distance(fit(60, FREE, 1).line().last())).isLessThan(4);
    }

    @Test
    void lineThatRunsOnFromAnUnpaintedTipIsLeftOut() {
        Plane plane = picture(60, 130);
        Regained bare = new Regained(t -> plane, new BlankFitter(480, HAND, FREE).painted(Paint.BARE), HAND, ROD);
        Fit taken = Objects.requireNonNull(
                bare.filled(looks(List.of())).get(DOUBTFUL).chosen());
        assertThat(taken.line().last().distance(fit(60, FREE, 1).line().last())).isLessThan(4);
        assertThat(taken.line().length()).isGreaterThan(0.8 * FREE);
        assertThat(regained(plane).filled(looks(List.of())).get(DOUBTFUL).chosen())
                .isNull();
    }

    /** Caught on an arm near the hand, which shifts where the rod would leave the hand. */
    @Test
    void aKinkNearTheHandIsCutOff() {
        Fit straight = fit(60, FREE, 9);
        List<Point> points = new ArrayList<>(straight.line().points());
        for (int k = 0; k < 8; k++) {
            points.set(k, points.get(k).plus(new Point(3.0 * (8 - k), 2.0 * (8 - k))));
        }
        Fit kinked = new Fit(new Polyline(points), 0.3, 9, 0.01, 2, 1000, 0.95, 0);
        List<Look> alone = looks(List.of());
        alone.set(DOUBTFUL, alone.get(DOUBTFUL).with(kinked));
        assertThat(Kinks.removed(alone, ROD).get(DOUBTFUL).chosen()).isNull();
        Fit taken = Objects.requireNonNull(
                regained(NOTHING).filled(looks(List.of(kinked))).get(DOUBTFUL).chosen());
        assertThat(taken.line().last().distance(straight.line().last())).isLessThan(10);
        assertThat(taken.line().length()).isLessThan(0.8 * FREE);
    }

    private static org.assertj.core.data.Offset<Double> offset() {
        return org.assertj.core.data.Offset.offset(0.02);
    }

    /** Its tip was hidden in the curve that was taken, while another that was found shows it. */
    @Test
    void aWholeCurveReplacesOneWithoutItsTip() {
        Fit cut = fit(60, FREE - 60, 2).withHidden(60);
        Fit whole = fit(60.3, FREE - 1, 2);
        List<Look> looks = looks(List.of(cut, whole));
        looks.set(DOUBTFUL, looks.get(DOUBTFUL).with(cut));
        Fit taken = Objects.requireNonNull(
                regained(NOTHING).filled(looks).get(DOUBTFUL).chosen());
        assertThat(taken.hiddenPx()).isZero();
        assertThat(taken.line().last().distance(whole.line().last())).isLessThan(1);
        List<Look> alone = looks(List.of(cut));
        alone.set(DOUBTFUL, alone.get(DOUBTFUL).with(cut));
        assertThat(regained(NOTHING).filled(alone).get(DOUBTFUL).chosen()).isSameAs(cut);
    }
}
