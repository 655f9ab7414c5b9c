package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Cover;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class UncoveredTest {

    private static final Point HANDS = new Point(500, 500);
    private static final RodLength.Estimate ROD = new RodLength.Estimate(300, 9, 1);

    private static Look look(int t, double degrees) {
        Point unit = new Point(Math.cos(Math.toRadians(degrees)), -Math.sin(Math.toRadians(degrees)));
        Polyline line = new Polyline(List.of(HANDS.plus(unit.times(30)), HANDS.plus(unit.times(300))));
        return new Look(t / 60.0, List.of(), new Fit(line, 0.5, 1, 0.01, 3, 100, 1, 0));
    }

    /** Waits for 400 frames at 60°, swings to 150° in 90, is not found in 20. */
    private static List<Look> swing() {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < 400; t++) {
            out.add(look(t, 60));
        }
        for (int t = 400; t < 490; t++) {
            out.add(look(t, 60 + t - 400));
        }
        for (int t = 490; t < 510; t++) {
            out.add(new Look(t / 60.0, List.of(), null));
        }
        return out;
    }

    private static List<Integer> every(int step) {
        return IntStream.range(0, 510).map(k -> step * k).boxed().toList();
    }

    @Test
    void aRodThatWaitsIsElsewhereInMostOfTheFramesAsked() {
        List<Cover> covers = Uncovered.covers(swing(), every(1), ROD, new Point(0, 0));
        assertThat(covers).hasSizeBetween(24, 60);
        Point onTheWaitingRod = HANDS.plus(new Point(0.5, -Math.sqrt(0.75)).times(200));
        long over = covers.stream()
                .filter(c -> c.line().distanceTo(onTheWaitingRod) < c.halfWidthPx())
                .count();
        assertThat(over).isLessThan(covers.size() / 3);
        assertThat(covers).allSatisfy(c -> assertThat(c.frame()).isLessThan(490));
    }

    @Test
    void everyThirdFrameIsEnoughAndCountedAsInTheClip() {
        List<Look> thirds =
                IntStream.range(0, 170).mapToObj(k -> swing().get(3 * k)).toList();
        List<Cover> covers = Uncovered.covers(thirds, every(3), ROD, new Point(0, 0));
        assertThat(covers).hasSizeGreaterThanOrEqualTo(24).allSatisfy(c -> {
            assertThat(c.frame() % 3).isZero();
            Point tip = swing().get(c.frame()).chosen().line().last();
            assertThat(c.line().distanceTo(tip)).isLessThan(c.halfWidthPx());
        });
    }

    @Test
    void aRodSeenInFewDirectionsTellsNothingOfWhatIsBehindIt() {
        assertThat(Uncovered.covers(swing().subList(0, 420), every(1), ROD, new Point(0, 0)))
                .isEmpty();
    }

    @Test
    void aRodFoundEverywhereNeedsNoSecondLook() {
        assertThat(Uncovered.needed(swing().subList(0, 490))).isFalse();
        assertThat(Uncovered.needed(swing().subList(380, 510))).isTrue();
    }
}
