package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.simulate.Presets;
import bendline.simulate.Simulator;
import bendline.simulate.Truth;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SimulatedTruthTest {

    @TempDir
    Path folder;

    @Test
    void carriesFramesEventsAndFaults() throws IOException {
        Truth truth = Simulator.truth(Presets.named("rushed"));
        Path file = folder.resolve("rushed.truth.json");
        truth.write(file);
        TruthClip clip = Truths.read(file);
        assertThat(clip.frames()).hasSize(truth.frames().size());
        TruthFrame middle = clip.frames().get(clip.frames().size() / 2);
        assertThat(middle.blank().last().distance(middle.tip())).isLessThan(0.01);
        assertThat(middle.blank().first().distance(middle.grip())).isLessThan(0.5);
        TruthCast cast = clip.casts().get(0);
        assertThat(cast.events()).containsKeys("release", "forwardStart");
        assertThat(cast.faults()).containsEntry("flat-rushed-backswing", "clear");
        assertThat(cast.launchSpeedMps()).isGreaterThan(5);
        assertThat(clip.at(cast.events().get("release")).seconds())
                .isEqualTo(cast.events().get("release"), within(1 / 60.0));
    }

    @Test
    void aClipWithNobodyInItHasNoRod() {
        TruthClip clip = SimulatedTruth.of(Simulator.truth(Presets.named("nobody")));
        assertThat(clip.casts()).isEmpty();
        assertThat(clip.frames()).allMatch(f -> f.rod() == null && !f.tipInView());
    }
}
