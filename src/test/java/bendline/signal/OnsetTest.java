package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Courses written down as formulas: a level of 5, and from a moment on a parabola. */
class OnsetTest {

    private static final double STEP = 1.0 / 120;
    private static final Onset.Level ABOUT_FIVE = new Onset.Level(5, 1);
    private static final ChangePoint.Asked ASKED = new ChangePoint.Asked(0.1, 0.4, STEP, 0);

    private static ChangePoint.Samples course(double moment, double sd, Random random) {
        double[] t = IntStream.range(0, 60).mapToDouble(i -> i * STEP).toArray();
        double[] v = IntStream.range(0, 60)
                .mapToDouble(i -> {
                    double since = Math.max(0, t[i] - moment);
                    return 5 + 40 * since + 300 * since * since + sd * random.nextGaussian();
                })
                .toArray();
        double[] sds =
                IntStream.range(0, 60).mapToDouble(i -> Math.max(sd, 1e-3)).toArray();
        return new ChangePoint.Samples(t, v, sds);
    }

    @Test
    void anExactCourseTellsItsMomentToATenthOfAStep() {
        ChangePoint onset = Onset.of(course(0.2537, 0, new Random(1)), ABOUT_FIVE, ASKED);
        assertThat(onset.at()).isCloseTo(0.2537, within(0.13 * STEP));
        assertThat(onset.before()).isEqualTo(31);
        assertThat(onset.after()).isEqualTo(29);
    }

    @Test
    void someWrongSamplesBeforeItDoNotTurnItOver() {
        ChangePoint.Samples s = course(0.25, 0.1, new Random(2));
        for (int i = 20; i < 24; i++) {
            s.values()[i] += 2;
        }
        ChangePoint onset = Onset.of(s, ABOUT_FIVE, ASKED);
        assertThat(onset.at()).isCloseTo(0.25, within(1.5 * STEP));
    }

    @Test
    void theStatedUncertaintyHoldsTheTruthInTwoOfThreeOrSomewhatMore() {
        Random random = new Random(3);
        int held = 0;
        for (int k = 0; k < 200; k++) {
            double moment = 0.2 + 0.1 * random.nextDouble();
            ChangePoint onset = Onset.of(course(moment, 0.3, random), ABOUT_FIVE, ASKED);
            held += Math.abs(onset.at() - moment) <= onset.sd() ? 1 : 0;
        }
        // 68 % of 200 are 136 ± 7; errors that may be large are allowed for, and these never are.
        assertThat(held).isBetween(122, 180);
    }

    @Test
    void errorsThatGoOnLeaveItLessCertain() {
        ChangePoint.Samples s = course(0.25, 0.2, new Random(4));
        double apart = Onset.of(s, ABOUT_FIVE, ASKED).sd();
        double alike = Onset.of(s, ABOUT_FIVE, new ChangePoint.Asked(0.1, 0.4, STEP, 4 * STEP))
                .sd();
        assertThat(alike).isBetween(1.2 * apart, 8 * apart);
    }
}
