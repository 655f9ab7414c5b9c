package bendline.body;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class HoldReaderTest {

    private static final double HEIGHT = 300;
    private static final int FRAMES = 20;

    /** A rod held at (500, 200) whose butt points down to the left; hands 80 px apart on it. */
    private static final Point GRIP = new Point(500, 200);

    private static final Point BUTT = new Point(-0.6, 0.8);

    private static Map<Integer, HeldRod> rods() {
        Map<Integer, HeldRod> out = new HashMap<>();
        for (int i = 0; i < FRAMES; i++) {
            out.put(i, new HeldRod(i, GRIP, BUTT));
        }
        return out;
    }

    private static List<BodySight> sights(Joint upper, Point up, Point low) {
        List<BodySight> out = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            Map<Joint, JointSight> joints = new EnumMap<>(Joint.class);
            for (Joint j : Joint.values()) {
                joints.put(j, new JointSight(new Point(480, 300), 0.9, 9));
            }
            joints.put(upper, new JointSight(up, 0.9, 9));
            joints.put(upper.other(), new JointSight(low, 0.9, 9));
            out.add(new BodySight(i, i / 60.0, 0.95, joints));
        }
        return out;
    }

    @ParameterizedTest
    @EnumSource(
            value = Joint.class,
            names = {"LEFT_WRIST", "RIGHT_WRIST"})
    void theHandNearerToTheTipIsTheUpperOneWhicheverItIs(Joint upper) {
        RodHold hold = HoldReader.of(sights(upper, GRIP, GRIP.plus(BUTT.times(80))), rods(), HEIGHT);
        assertThat(hold.upper()).isEqualTo(upper);
        assertThat(hold.apartPx()).isEqualTo(80, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(hold.apartSdPx()).isGreaterThan(0);
    }

    @Test
    void handsInOnePlaceCannotBeToldApart() {
        RodHold hold = HoldReader.of(sights(Joint.LEFT_WRIST, GRIP, GRIP.plus(BUTT.times(8))), rods(), HEIGHT);
        assertThat(hold.known()).isFalse();
        assertThat(hold.basis()).contains("could not be told apart");
    }

    /** A hidden wrist is guessed on top of the other, or beyond it. */
    @Test
    void aWristThatIsGuessedTellsNothing() {
        List<BodySight> sights = new ArrayList<>();
        for (BodySight s : sights(Joint.LEFT_WRIST, GRIP, GRIP.plus(BUTT.times(80)))) {
            Map<Joint, JointSight> joints = new EnumMap<>(s.joints());
            if (s.frame() % 3 != 0) {
                Point beyond = GRIP.minus(BUTT.times(30));
                joints.put(Joint.RIGHT_WRIST, new JointSight(beyond, 0.3, 20));
            }
            sights.add(new BodySight(s.frame(), s.seconds(), s.person(), joints));
        }
        RodHold hold = HoldReader.of(sights, rods(), HEIGHT);
        assertThat(hold.upper()).isEqualTo(Joint.LEFT_WRIST);
        assertThat(hold.apartPx()).isEqualTo(80, org.assertj.core.data.Offset.offset(1e-9));
    }

    /** Nothing is told of the clip then, but in each frame the wrist that leads is known. */
    @Test
    void whereLeftAndRightChangePlacesEachFrameSpeaksForItself() {
        Point low = GRIP.plus(BUTT.times(80));
        List<BodySight> one = sights(Joint.LEFT_WRIST, GRIP, low);
        List<BodySight> other = sights(Joint.RIGHT_WRIST, GRIP, low);
        List<BodySight> swapped = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            swapped.add(i % 2 == 0 ? one.get(i) : other.get(i));
        }
        RodHold hold = HoldReader.of(swapped, rods(), HEIGHT);
        assertThat(hold.known()).isFalse();
        assertThat(hold.upperIn(4)).isEqualTo(Joint.LEFT_WRIST);
        assertThat(hold.upperIn(5)).isEqualTo(Joint.RIGHT_WRIST);
        RodHold steady = HoldReader.of(one, rods(), HEIGHT);
        assertThat(steady.upperIn(FRAMES + 1)).isEqualTo(Joint.LEFT_WRIST);
    }

    @Test
    void handsFarFromTheRodAreSomebodyElses() {
        Point off = new Point(200, 0);
        RodHold hold = HoldReader.of(
                sights(Joint.LEFT_WRIST, GRIP.plus(off), GRIP.plus(off).plus(BUTT.times(80))), rods(), HEIGHT);
        assertThat(hold.known()).isFalse();
        assertThat(hold.basis()).contains("not on the rod");
    }

    @Test
    void aFewFramesAreTooFew() {
        RodHold hold = HoldReader.of(
                sights(Joint.LEFT_WRIST, GRIP, GRIP.plus(BUTT.times(80))).subList(0, 3), rods(), HEIGHT);
        assertThat(hold.basis()).contains("3 frames only");
    }
}
