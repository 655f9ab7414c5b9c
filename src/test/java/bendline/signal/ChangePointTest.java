package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Likelihoods written down as formulas. */
class ChangePointTest {

    private static final ChangePoint.Samples SAMPLES = new ChangePoint.Samples(
            IntStream.range(0, 100).mapToDouble(i -> 0.01 * i).toArray(), new double[100], new double[100]);

    @Test
    void aNormalLikelihoodGivesItsOwnMiddleAndSpread() {
        ChangePoint c = ChangePoint.of(
                SAMPLES, new ChangePoint.Asked(0.2, 0.8, 0.01, 0), m -> -0.5 * Math.pow((m - 0.503) / 0.04, 2));
        assertThat(c.at()).isCloseTo(0.503, within(1e-4));
        assertThat(c.sd()).isCloseTo(0.04, within(1e-4));
        assertThat(c.before()).isEqualTo(51);
        assertThat(c.after()).isEqualTo(49);
    }

    @Test
    void errorsThatGoOnForFourSamplesMakeItTwiceAsUnsure() {
        ChangePoint c = ChangePoint.of(
                SAMPLES, new ChangePoint.Asked(0.2, 0.8, 0.01, 0.04), m -> -0.5 * Math.pow((m - 0.503) / 0.04, 2));
        assertThat(c.sd()).isCloseTo(0.08, within(1e-3));
    }

    @Test
    void noTimeToAskIsRefused() {
        assertThatThrownBy(() -> new ChangePoint.Asked(0.4, 0.4, 0.01, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("0.4");
    }
}
