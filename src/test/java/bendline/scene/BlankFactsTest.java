package bendline.scene;

import static org.assertj.core.api.Assertions.assertThatNoException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BlankFactsTest {

    /** 2.75 lb are 1.247 kg (0.45359237 kg a pound, exact). */
    @ParameterizedTest
    @CsvSource({"1200, 1200 g", "0.00275, 2.75 lb", "45, 45 oz"})
    void answersAWrongUnitWithTheRightOne(double kg, String meant) {
        assertThatThrownBy(() -> new BlankFacts(kg, null, null, null))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("outside 0.2 to 4.5 kg")
                .hasMessageContaining("did you mean " + meant + "?");
    }

    @Test
    void takesWhatRodsHave() {
        assertThatNoException().isThrownBy(() -> new BlankFacts(2.75 * 0.45359237, 0.08, "medium-feeder", null));
        assertThatThrownBy(() -> new BlankFacts(null, 85.0, null, null)).hasMessageContaining("did you mean 85 g?");
        assertThatThrownBy(() -> new BlankFacts(0.08, null, null, null))
                .hasMessageContaining("that is a weight to cast");
        assertThatThrownBy(() -> new BlankFacts.Measured(0, 0.1, 0.01)).hasMessageContaining("bending stiffness");
    }
}
