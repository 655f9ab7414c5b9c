package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

/** A rod that swings about a hand on a curved way, 60 frames a second; places are written down, and ends err as they say. */
class TipAnchorTest {

    private static final double FREE = 300;
    private static final RodLength.Estimate ROD = new RodLength.Estimate(FREE, 3, 1);
    private static final int FRAMES = 60;

    private static Point hand(int t) {
        return new Point(500 + 2.0 * t, 500 - 40 * Math.sin(t / 20.0));
    }

    private static Point tip(int t) {
        return hand(t).plus(Point.direction(-Math.toRadians(60 + t)).times(FREE));
    }

    /** Each frame's end so much too far out, and as unsure as it says, pixels. */
    private static List<Look> looks(IntToDoubleFunction out, IntToDoubleFunction sd) {
        List<Look> looks = new ArrayList<>();
        for (int t = 0; t < FRAMES; t++) {
            Point end = hand(t).towards(tip(t), (FREE + out.applyAsDouble(t)) / FREE);
            Polyline line = new Polyline(List.of(hand(t).towards(tip(t), -0.1), end));
            looks.add(new Look(t / 60.0, List.of(), new Fit(line, 0.5, sd.applyAsDouble(t), 0.01, 3, 100, 1, 0)));
        }
        return looks;
    }

    private static Fit fit(List<Look> looks, int t) {
        return Objects.requireNonNull(looks.get(t).chosen());
    }

    private static double off(List<Look> looks, int t) {
        Fit fit = fit(looks, t);
        return fit.line().at(fit.line().length() + fit.hiddenPx()).distance(tip(t));
    }

    private static double rms(List<Look> looks) {
        return Math.sqrt(IntStream.range(0, FRAMES)
                .mapToDouble(t -> off(looks, t) * off(looks, t))
                .average()
                .orElseThrow());
    }

    @Test
    void endsThatJumpArePutBack() {
        List<Look> steadied = TipAnchor.steadied(looks(t -> t == 20 ? -40 : t == 41 || t == 42 ? 25 : 0, t -> 1), ROD);
        for (int t = 0; t < FRAMES; t++) {
            assertThat(off(steadied, t)).as("frame %d", t).isLessThan(2);
        }
        assertThat(fit(steadied, 20).alongSdPx()).isGreaterThan(2);
    }

    /** The mean of n independent errors is √n times as small (textbook); the parabola's three numbers and nearness take some of that. */
    @Test
    void endsThatAreUnsureGainByTheirNeighbours() {
        Random random = new Random(4);
        double[] errors = random.doubles(FRAMES, -1, 1).map(e -> 7 * e).toArray();
        List<Look> looks = looks(t -> errors[t], t -> 4);
        assertThat(rms(TipAnchor.steadied(looks, ROD))).isLessThan(0.6 * rms(looks));
    }

    @Test
    void aSureEndStaysAmongUnsureOnes() {
        Random random = new Random(5);
        double[] errors = random.doubles(FRAMES, -1, 1).map(e -> 8 * e).toArray();
        List<Look> steadied = TipAnchor.steadied(looks(t -> t == 30 ? 0 : errors[t], t -> t == 30 ? 0.4 : 5), ROD);
        assertThat(off(steadied, 30)).isLessThan(0.3);
        assertThat(fit(steadied, 30).alongSdPx()).isEqualTo(0.4);
    }

    /** What is drawn on from a line that lost its tip is worth less than the ends about it. */
    @Test
    void aHiddenPieceIsMadeAsLongAsTheHandsWaySays() {
        List<Look> looks = looks(t -> t == 25 ? -60 : 0, t -> 1);
        looks.set(25, looks.get(25).with(fit(looks, 25).withHidden(75)));
        List<Look> steadied = TipAnchor.steadied(looks, ROD);
        assertThat(fit(steadied, 25).hiddenPx()).isEqualTo(60, within(2.0));
    }

    @Test
    void tooFewNeighboursTellNothing() {
        List<Look> alone = looks(t -> t == 2 ? 30 : 0, t -> 1).subList(0, 5);
        assertThat(TipAnchor.steadied(alone, ROD)).isEqualTo(alone);
    }
}
