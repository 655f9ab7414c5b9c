package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.List;
import org.junit.jupiter.api.Test;

class CluesTest {

    private static Clue clue(String what, double seconds, double sd) {
        return new Clue(what, seconds, sd, 0.85);
    }

    /** Two independent measurements of the same quantity: inverse-variance weighting, a textbook formula. */
    @Test
    void cluesThatCannotBeWrongAreWeighedByTheirVariances() {
        Found both = Clues.together(List.of(new Clue("a", 1.00, 0.01, 1), new Clue("b", 1.02, 0.02, 1)));
        assertThat(both.value()).isEqualTo((1.00 / 1e-4 + 1.02 / 4e-4) / (1 / 1e-4 + 1 / 4e-4), offset(1e-4));
        // 0.9945 standard deviations hold 68 %.
        assertThat(both.sd()).isEqualTo(0.9945 / Math.sqrt(1 / 1e-4 + 1 / 4e-4), offset(3e-4));
    }

    @Test
    void oneClueAgainstThreeCountsLittleAndIsNamed() {
        Found f = Clues.together(List.of(
                clue("the rig", 2.28, 0.005),
                clue("the blank", 2.00, 0.025),
                clue("the tip", 2.01, 0.035),
                clue("the butt", 1.99, 0.03)));
        assertThat(f.value()).isEqualTo(2.0, offset(0.01));
        assertThat(f.sd()).isLessThan(0.03);
        assertThat(f.basis()).containsPattern("against it: the rig \\(28\\d ms later\\)");
    }

    @Test
    void twoCluesThatContradictEachOtherLeaveItAsWideAsTheyLieApart() {
        Found f = Clues.together(List.of(clue("the rig", 1.3, 0.02), clue("the blank", 1.0, 0.02)));
        assertThat(f.sd()).isBetween(0.1, 0.4);
    }

    @Test
    void nothingTellsNothing() {
        assertThat(Clues.together(List.of(clue("a", Double.NaN, 0.1))).known()).isFalse();
    }
}
