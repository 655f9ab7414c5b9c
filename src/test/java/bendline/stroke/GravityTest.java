package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import bendline.scene.Setup;
import java.util.List;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;

/** Pendulum and fall as in any textbook of mechanics; g is the standard one of CGPM 1901. */
class GravityTest {

    private static final Setup FREE = new Setup(null, HangingRig.FREE_M, null, null, null, null, List.of());

    @Test
    void aHangingRigTellsHowMuchSlowerAClipPlays() {
        for (double factor : new double[] {1, 4, 8}) {
            Pace pace = Gravity.hanging(
                    HangingRig.trace(120, factor, 3.5, HangingRig.STILL, HangingRig.swinging(1.1, 4)), FREE);
            assertThat(pace).as("played %s times slower", factor).isNotNull();
            assertThat(pace.away(factor)).as(pace.toString()).isLessThan(2);
            assertThat(pace.relativeSd()).isLessThan(0.12);
        }
    }

    @Test
    void withoutAnyLengthTheClueIsVague() {
        Pace pace = Gravity.hanging(
                HangingRig.trace(120, 4, 3.5, HangingRig.STILL, HangingRig.swinging(1.1, 4)), Setup.NONE);
        assertThat(pace).isNotNull();
        assertThat(pace.relativeSd()).isGreaterThan(0.15);
        assertThat(pace.away(1)).isGreaterThan(3);
        assertThat(pace.away(4)).isLessThan(2);
    }

    @Test
    void aRigThatHangsStillOrARodThatTremblesTellsNothing() {
        assertThat(Gravity.hanging(
                        HangingRig.trace(120, 1, 3.5, HangingRig.STILL, HangingRig.swinging(1.1, 0.1)), FREE))
                .isNull();
        DoubleFunction<Point> trembling = t -> new Point(9 * Math.sin(2 * Math.PI * 2.4 * t), 0);
        DoubleFunction<Point> dragged = t -> new Point(-7 * Math.sin(2 * Math.PI * 2.4 * t), 140);
        assertThat(Gravity.hanging(HangingRig.trace(120, 1, 3.5, trembling, dragged), FREE))
                .isNull();
    }

    @Test
    void aTipThatGivesWayMakesTheLongerPendulumThatItIs() {
        // The tip follows the rig by a sixth: the rig swings about a point that lies a fifth of the drop above the tip.
        double omega = Math.sqrt(Gravity.STANDARD / (1.1 * 1.2));
        DoubleFunction<Point> tip = t -> new Point(2 * Math.cos(omega * t), 0);
        DoubleFunction<Point> rig = t -> new Point(10 * Math.cos(omega * t), 1.1 * HangingRig.PX_PER_M);
        Pace pace = Gravity.hanging(HangingRig.trace(120, 1, 4, tip, rig), FREE);
        assertThat(pace).isNotNull();
        assertThat(pace.factor()).isCloseTo(1, within(0.06));
    }

    @Test
    void aFlyingRigIsPulledDown() {
        for (double factor : new double[] {1, 4}) {
            DoubleFunction<Point> rig = t -> {
                double flown = Math.max(0, t - 0.5);
                return new Point(8 + 20 * flown, 1.1 - 14 * flown + 0.5 * 1.3 * Gravity.STANDARD * flown * flown)
                        .times(HangingRig.PX_PER_M);
            };
            Pace pace = Gravity.flying(HangingRig.trace(120, factor, 0.9, HangingRig.STILL, rig), FREE, 0.5 * factor);
            assertThat(pace).as("played %s times slower", factor).isNotNull();
            assertThat(pace.away(factor)).as(pace.toString()).isLessThan(2);
            assertThat(pace.away(factor * 4)).as(pace.toString()).isGreaterThan(3);
        }
    }
}
