package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class MarkFollowerTest {

    private static final int STEPS = 80;

    /** A line of 400 px whose heading is given along its length, 0 to 1, radians. */
    private static Polyline heading(DoubleUnaryOperator radians) {
        List<Point> points = new ArrayList<>(List.of(new Point(500, 500)));
        for (int k = 0; k < STEPS; k++) {
            double angle = radians.applyAsDouble((k + 0.5) / STEPS);
            Point last = points.get(points.size() - 1);
            points.add(last.plus(new Point(Math.cos(angle), Math.sin(angle)).times(400.0 / STEPS)));
        }
        return new Polyline(points);
    }

    @Test
    void aBlankBentToTheFullDoesNotWind() {
        // Its tip at right angles to its butt, which is where the test curve is read; the turn grows outwards.
        assertThat(MarkFollower.winds(heading(u -> Math.toRadians(90) * u * u))).isFalse();
        assertThat(MarkFollower.winds(heading(u -> Math.toRadians(-90) * u))).isFalse();
    }

    @Test
    void aLineThatTurnsAwayInsideTheHandDoes() {
        assertThat(MarkFollower.winds(heading(u -> u < 0.15 ? Math.toRadians(-120) * (1 - u / 0.15) : 0.3 * u)))
                .isTrue();
    }

    /** A bent dark blank on a noisy picture of 320 by 200, shifted to the left by so much. */
    private static Plane picture(double left, long seed) {
        Random random = new Random(seed);
        Polyline blank = blank(left);
        float[] v = new float[320 * 200];
        for (int y = 0; y < 200; y++) {
            for (int x = 0; x < 320; x++) {
                double d = blank.distanceTo(new Point(x + 0.5, y + 0.5));
                v[y * 320 + x] = (float) (-5 * Math.exp(-d * d / 2) + 0.4 * random.nextGaussian());
            }
        }
        return new Plane(320, 200, v);
    }

    private static Polyline blank(double left) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= 40; i++) {
            double a = Math.PI / 2 * i / 40;
            points.add(new Point(30 - left + 220 * Math.sin(a), 60 + 90 * (1 - Math.cos(a))));
        }
        return new Polyline(points);
    }

    @Test
    void aBlankIsFollowedWhileItsHandsAreOutOfThePicture() {
        // Two pixels a frame to the left and back: the hand is out of the picture from frame 16 to frame 64.
        int frames = 80;
        double[] left = new double[frames];
        for (int t = 0; t < frames; t++) {
            left[t] = 2.0 * Math.min(t, frames - t);
        }
        MarkFollower follower = new MarkFollower(
                t -> picture(left[t], t),
                Collections.nCopies(frames, Homography.IDENTITY),
                IntStream.range(0, frames).mapToObj(t -> t / 30.0).toList(),
                200);
        MarkFollower.Walk followed = follower.follow(0, blank(0).first(), blank(0).last());
        assertThat(followed).isNotNull();
        for (int t = 0; t < frames; t += 5) {
            BlankFitter.Fit fit = followed.looks().get(t).chosen();
            assertThat(fit).as("frame " + t).isNotNull();
            assertThat(fit.line().last().distance(blank(left[t]).last()))
                    .as("tip in frame " + t + ": far less than the " + fit.alongSdPx() + " px that are stated")
                    .isLessThan(8);
            assertThat(blank(left[t]).distanceTo(fit.line().at(fit.line().length() / 2)))
                    .as("middle in frame " + t)
                    .isLessThan(1);
        }
    }
}
