package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Work put in = motion + bend + height + losses, through a whole cast. */
class EnergyBookTest {

    @Test
    void theBooksBalanceThroughAGoodCast() {
        Motion motion = cast(0, 0);
        assertThat(motion.workIn()).isBetween(60.0, 300.0);
        assertThat(motion.worstBalance()).isLessThan(1e-4 * motion.workIn());
    }

    /** Snatches of a slack line are the hardest for the step; a thousandth is still kept. */
    @Test
    void theBooksBalanceThroughARushedCast() {
        Motion motion = cast(1, 1);
        assertThat(motion.worstBalance()).isLessThan(2e-3 * motion.workIn());
    }

    @Test
    void theSameScriptGivesTheSameMotionToTheLastBit() {
        Motion one = cast(0.8, 0);
        Motion two = cast(0.8, 0);
        Motion.Moment a = one.sample(one.size() - 1);
        Motion.Moment b = two.sample(two.size() - 1);
        assertThat(a.nodeX()).isEqualTo(b.nodeX());
        assertThat(a.rigY()).isEqualTo(b.rigY());
    }

    private static Motion cast(double rush, double drop) {
        CastScript script = CastScript.of(0.4, rush, drop);
        return CastRun.compute(
                RodSpec.medium(), RigSpec.feeder(85, 1.25), List.of(script), 1.78, script.overSeconds() - 1, 5);
    }
}
