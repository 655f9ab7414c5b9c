package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The flying rig against textbook flight. */
class RigFlightTest {

    private static final double DT = 2e-4;

    /** Standard gravity of the third General Conference on Weights and Measures, 1901: 9.80665 m/s². */
    @Test
    void fallsFreely() {
        ChainState rig = fly(RodChain.GRAVITY, rig(80, 0), 0, 0, 1.5, s -> false);
        assertThat(rig.rigY).isEqualTo(-0.5 * 9.80665 * 1.5 * 1.5, within(1e-6));
        assertThat(rig.rigVy).isEqualTo(-9.80665 * 1.5, within(1e-9));
    }

    /**
     * Taylor, Classical Mechanics, example 2.6: a baseball of 0.15 kg and 7 cm, drag 0.25·D²·v², thrown with 30 m/s at 50
     * degrees flies about 59 m (read from its figure) where it would fly some 90 m in a vacuum.
     */
    @Test
    void fliesShorterThroughTheAir() {
        double dragAreaCm2 = 0.25 * 0.07 * 0.07 * 2 / 1.225 * 1e4;
        double angle = Math.toRadians(50);
        ChainState ball =
                fly(9.8, rig(150, dragAreaCm2), 30 * Math.cos(angle), 30 * Math.sin(angle), 10, s -> s.rigY < 0);
        assertThat(ball.rigX).isEqualTo(59, within(0.02 * 59));
        ChainState vacuum = fly(9.8, rig(150, 0), 30 * Math.cos(angle), 30 * Math.sin(angle), 10, s -> s.rigY < 0);
        assertThat(vacuum.rigX).isEqualTo(90.44, within(0.05));
    }

    /** Straight up with quadratic drag: apex vt²/(2g)·ln(1 + v₀²/vt²) (textbook, from memory). */
    @Test
    void risesToTheHeightOfTheFormula() {
        double vt = 34.7;
        double k = 9.80665 / (vt * vt);
        ChainState ball = fly(9.80665, rig(150, k * 2 * 0.15 / 1.225 * 1e4), 0, 40, 10, s -> s.rigVy < 0);
        assertThat(ball.rigY).isEqualTo(vt * vt / (2 * 9.80665) * Math.log(1 + 1600 / (vt * vt)), within(1e-3));
    }

    private static RigSpec rig(double massG, double dragAreaCm2) {
        return new RigSpec(massG, 1, dragAreaCm2, 1800, 0, 0, 0, 0);
    }

    private static ChainState fly(
            double gravity,
            RigSpec rig,
            double vx,
            double vy,
            double seconds,
            java.util.function.Predicate<ChainState> end) {
        RigLine line = new RigLine(rig);
        line.become(RigLine.State.LYING);
        ChainStepper stepper = new ChainStepper(new RodChain(TestRods.uniform(100, 0.05), 4), line, rig, gravity, DT);
        ChainState s = stepper.state();
        s.rigX = 0;
        s.rigY = 0;
        s.rigVx = vx;
        s.rigVy = vy;
        HandPose hand = TestRods.still(1);
        for (long i = 0; i < Math.round(seconds / DT) && !(i > 0 && end.test(s)); i++) {
            stepper.step(hand);
        }
        return s;
    }
}
