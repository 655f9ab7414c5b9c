package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class TimelineTest {

    private static final double NONE = Double.NaN;

    private static List<Double> repaired(Timeline timeline, double... stamps) {
        List<Double> times = new ArrayList<>();
        for (double stamp : stamps) {
            timeline.offer(stamp);
            while (timeline.hasReady()) {
                times.add(timeline.take());
            }
        }
        timeline.finish();
        while (timeline.hasReady()) {
            times.add(timeline.take());
        }
        return times;
    }

    private static void assertTimes(List<Double> got, double... expected) {
        assertThat(got).hasSize(expected.length);
        for (int i = 0; i < expected.length; i++) {
            assertThat(got.get(i)).as("frame %d", i).isCloseTo(expected[i], within(1e-9));
        }
    }

    @Test
    void goodStampsAreKeptMinusTheFirst() {
        Timeline timeline = new Timeline(0.04);
        assertTimes(repaired(timeline, 10, 10.04, 10.09, 10.4), 0, 0.04, 0.09, 0.4);
        assertThat(timeline.notes()).isEmpty();
    }

    @Test
    void negativeStartsAreZeroToo() {
        assertTimes(repaired(new Timeline(0.04), -0.467, -0.427, -0.387), 0, 0.04, 0.08);
    }

    @Test
    void equalStampsAreSpreadBetweenTheirNeighbours() {
        Timeline timeline = new Timeline(0.04);
        assertTimes(repaired(timeline, 0, 0.04, 0.04, 0.04, 0.16), 0, 0.04, 0.08, 0.12, 0.16);
        assertThat(timeline.notes()).singleElement().asString().startsWith("2 frames had a missing, repeated");
    }

    @Test
    void aBackwardStampIsSpreadTheSameWay() {
        assertTimes(repaired(new Timeline(0.04), 0, 0.04, 0.08, 0.02, 0.16), 0, 0.04, 0.08, 0.12, 0.16);
    }

    @Test
    void missingStampsAreFilledAlsoAtTheEnds() {
        assertTimes(repaired(new Timeline(0.04), NONE, NONE, 7.0, 7.04, NONE), 0, 0.04, 0.08, 0.12, 0.16);
    }

    @Test
    void noStampsAtAllGiveTheStatedStep() {
        assertTimes(repaired(new Timeline(0.02), NONE, NONE, NONE), 0, 0.02, 0.04);
    }

    @Test
    void aClockSetBackGoesOnAfterTheLastGoodFrame() {
        double[] stamps = new double[40];
        double[] expected = new double[40];
        for (int i = 0; i < 40; i++) {
            stamps[i] = i < 20 ? 5 + i * 0.04 : (i - 20) * 0.04;
            expected[i] = i * 0.04;
        }
        Timeline timeline = new Timeline(0.04);
        assertTimes(repaired(timeline, stamps), expected);
        assertThat(timeline.notes()).singleElement().asString().contains("clock was set back 1 time;");
    }

    @Test
    void anAbsurdJumpIsOneStep() {
        Timeline timeline = new Timeline(0.04);
        assertTimes(repaired(timeline, 0, 0.04, 0.08, 36000), 0, 0.04, 0.08, 0.12);
        assertThat(timeline.notes()).singleElement().asString().contains("jumps ahead by 36000 s at 0.08 s");
    }

    @Property(tries = 300)
    void whateverComesTimesRiseAndNoFrameIsLost(
            @ForAll @Size(min = 1, max = 60) List<@DoubleRange(min = -100, max = 100) Double> stamps) {
        List<Double> times = repaired(
                new Timeline(0.04),
                stamps.stream().mapToDouble(s -> s > 90 ? NONE : s).toArray());
        assertThat(times).hasSameSizeAs(stamps).isSorted().doesNotHaveDuplicates();
        assertThat(times.get(0)).isZero();
    }
}
