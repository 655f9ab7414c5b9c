package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class ScenarioDeckTest {

    @Test
    void theSameSeedDealsTheSame() {
        assertThat(ScenarioDeck.deal(41, 2)).isEqualTo(ScenarioDeck.deal(41, 2));
        assertThat(ScenarioDeck.random(41)).isNotEqualTo(ScenarioDeck.random(42));
    }

    /**
     * A dozen holds every kind of stroke, both directions and several phones. In this one the first of two casts would come off best if
     * it waited until the second has begun.
     */
    @Test
    void aDozenIsVaried() {
        List<Scenario> dozen = ScenarioDeck.deal(20_261_128, 12);
        assertThat(dozen).filteredOn(s -> !s.angler()).hasSize(1);
        assertThat(dozen).filteredOn(s -> s.casts().size() == 2).hasSize(1);
        assertThat(dozen)
                .filteredOn(s -> s.casts().stream().anyMatch(CastScript::putDown))
                .hasSize(1);
        assertThat(dozen).extracting(Scenario::leftToRight).contains(true, false);
        assertThat(dozen).extracting(s -> s.camera().captureFps()).contains(30.0, 60.0, 120.0);
        assertThat(dozen).extracting(Scenario::name).doesNotHaveDuplicates();
        assertThat(dozen)
                .flatExtracting(Scenario::casts)
                .extracting(CastScript::rushedFlat)
                .contains(Severity.NONE, Severity.CLEAR);
        assertThat(dozen)
                .flatExtracting(Scenario::casts)
                .extracting(CastScript::tipDrop)
                .contains(Severity.NONE, Severity.CLEAR);
    }

    @Test
    void presetsAreFoundByNameOnly() {
        assertThat(Presets.names())
                .contains("good", "rushed", "early-drop", "both", "nobody", "twice", "put-down", "mild");
        assertThat(Presets.named("nobody").angler()).isFalse();
        assertThatThrownBy(() -> Presets.named("splendid")).hasMessageContaining("there is no preset \"splendid\"");
    }
}
