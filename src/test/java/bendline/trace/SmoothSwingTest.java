package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A blank that bends more and more as it turns about a hand, 120 frames a second; places are written down. */
class SmoothSwingTest {

    private static final double FREE = 300;
    private static final RodLength.Estimate ROD = new RodLength.Estimate(FREE, 3, 1);
    private static final int FRAMES = 40;

    /** A blank whose outer half is so much beside where it is, pixels at the tip. */
    private static Polyline blank(int t, double besidePx) {
        List<Point> points = new ArrayList<>();
        Point hand = new Point(500, 500);
        for (int k = 0; k <= 59; k++) {
            double u = k / 59.0;
            double angle = -Math.toRadians(60 + 0.04 * t * t + 0.3 * t * u * u);
            double outer = Math.max(0, 2 * u - 1);
            points.add(hand.plus(Point.direction(angle).times(FREE * u))
                    .plus(Point.direction(angle + Math.PI / 2).times(besidePx * outer * outer)));
        }
        return new Polyline(points);
    }

    private static List<Look> looks(IntToDoubleFunction besidePx, double sd) {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < FRAMES; t++) {
            Fit fit = new Fit(blank(t, besidePx.applyAsDouble(t)), sd, 1, 0.01, 3, 100, 1, 0);
            out.add(new Look(t / 120.0, List.of(), fit));
        }
        return out;
    }

    private static double off(List<Look> looks, int t) {
        return Objects.requireNonNull(looks.get(t).chosen())
                .line()
                .last()
                .distance(blank(t, 0).last());
    }

    @Test
    void anOuterBlankDrawnAsideInOneFrameIsPutBack() {
        List<Look> steadied = SmoothSwing.steadied(looks(t -> t == 20 ? 15 : 0, 1), ROD);
        for (int t = 0; t < FRAMES; t++) {
            assertThat(off(steadied, t)).as("frame %d", t).isLessThan(1.5);
        }
        Polyline put = Objects.requireNonNull(steadied.get(20).chosen()).line();
        assertThat(put.points())
                .allSatisfy(p -> assertThat(blank(20, 0).distanceTo(p)).isLessThan(2));
    }

    /** The mean of n independent errors is √n times as small (textbook). */
    @Test
    void unsureBlanksGainByTheirNeighbours() {
        Random random = new Random(8);
        double[] errors = random.doubles(FRAMES, -1, 1).map(e -> 7 * e).toArray();
        List<Look> looks = looks(t -> errors[t], 4);
        assertThat(rms(SmoothSwing.steadied(looks, ROD))).isLessThan(0.8 * rms(looks));
    }

    private static double rms(List<Look> looks) {
        return Math.sqrt(IntStream.range(4, FRAMES - 4)
                .mapToDouble(t -> off(looks, t) * off(looks, t))
                .average()
                .orElseThrow());
    }

    /** At 60 frames a second a tip that whips on by 60 px a frame and stops within one: no neighbour tells that, and it stays as it was seen. */
    @Test
    void aSuddenStopIsNotSmoothedAway() {
        List<Look> out = new ArrayList<>();
        List<Point> tips = new ArrayList<>();
        for (int t = 0; t < FRAMES; t++) {
            double angle = -Math.toRadians(20 + 11.5 * Math.min(t, 20) - (t > 20 ? 3 * Math.sin((t - 20) / 2.0) : 0));
            Polyline line = new Polyline(List.of(
                    new Point(500, 500),
                    new Point(500, 500).plus(Point.direction(angle).times(FREE))));
            tips.add(line.last());
            out.add(new Look(t / 60.0, List.of(), new Fit(line.resampled(60), 0.5, 1, 0.01, 3, 100, 1, 0)));
        }
        List<Look> steadied = SmoothSwing.steadied(out, ROD);
        for (int t = 17; t < 24; t++) {
            Point tip = Objects.requireNonNull(steadied.get(t).chosen()).line().last();
            assertThat(tip.distance(tips.get(t))).as("frame %d", t).isLessThan(3);
        }
    }

    /** At 30 frames a second a blank that rings six times a second is at another place of its swing in each of five frames. */
    @Test
    void aRingBetweenFramesFarApartIsLeftAlone() {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < FRAMES; t++) {
            Polyline line = blank(0, 20 * Math.sin(2 * Math.PI * 6 * t / 30.0));
            out.add(new Look(t / 30.0, List.of(), new Fit(line, 0.5, 1, 0.01, 3, 100, 1, 0)));
        }
        List<Look> steadied = SmoothSwing.steadied(out, ROD);
        for (int t = 0; t < FRAMES; t++) {
            Point tip = Objects.requireNonNull(steadied.get(t).chosen()).line().last();
            Point was = Objects.requireNonNull(out.get(t).chosen()).line().last();
            assertThat(tip.distance(was)).as("frame %d", t).isLessThan(0.5);
        }
    }

    @Test
    void theFirstAndTheLastFramesHaveNothingToGoBy() {
        List<Look> looks = looks(t -> t == 0 || t == FRAMES - 1 ? 9 : 0, 1);
        List<Look> steadied = SmoothSwing.steadied(looks, ROD);
        assertThat(off(steadied, 0)).isEqualTo(off(looks, 0));
        assertThat(off(steadied, FRAMES - 1)).isEqualTo(off(looks, FRAMES - 1));
    }
}
