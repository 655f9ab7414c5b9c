package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The hanging rig swings like a pendulum as long as its line: 2·π·√(L/g) for small swings (Huygens 1673). */
class RigPendulumTest {

    private static final double DT = 2e-4;

    @ParameterizedTest
    @CsvSource({"0.8, 0.03", "1.25, 0.03", "1.6, 0.05"})
    void swingsInTheTimeOfItsDrop(double drop, double swing) {
        // A rod so stiff that its tip stays where it is.
        RodSpec rod = new RodSpec(2, 1.2, 2000, 2000, 4, 0.3, 0.3, 30, 30, 0.002);
        RigSpec rig = new RigSpec(60, drop, 0, 20_000, 0.001, 0, 0, 0);
        RigLine line = new RigLine(rig);
        ChainStepper stepper = new ChainStepper(new RodChain(rod, 6), line, rig, RodChain.GRAVITY, DT);
        HandPose hand = TestRods.still(Math.toRadians(60));
        stepper.rest(hand);
        double tipX = stepper.tip(hand)[0];
        stepper.state().rigX += drop * Math.sin(swing);
        stepper.state().rigY += drop * (1 - Math.cos(swing));
        double first = Double.NaN;
        double last = Double.NaN;
        int swings = -1;
        double before = swing;
        for (int i = 0; i < 12 / DT && swings < 4; i++) {
            stepper.step(hand);
            double now = stepper.state().rigX - tipX;
            if (before < 0 && now >= 0) {
                last = (i + before / (before - now)) * DT;
                first = swings < 0 ? last : first;
                swings++;
            }
            before = now;
        }
        double expected = 2 * Math.PI * Math.sqrt(drop / 9.80665);
        assertThat((last - first) / swings).isEqualTo(expected, within(0.002 * expected));
    }
}
