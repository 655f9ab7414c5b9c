package bendline.technique;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bendline.scene.Setup.Side;
import bendline.stroke.AnalyticStroke;
import bendline.stroke.Measure;
import bendline.stroke.Strokes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LimitsTest {

    @TempDir
    Path folder;

    @Test
    void everyLimitHasAReasonASourceAndTheUnitOfItsMeasure() {
        Map<String, Measure> measures = Strokes.timed(AnalyticStroke.GOOD, 60, 1, Side.RIGHT).measures().stream()
                .collect(Collectors.toMap(Measure::id, Function.identity()));
        assertThat(Limits.standard().all()).isNotEmpty().allSatisfy(l -> {
            assertThat(l.reason()).as(l.id()).isNotBlank();
            assertThat(l.source()).as(l.id()).matches("(common practice, no source|derived.*)");
            assertThat(measures).containsKey(l.measure());
            assertThat(l.unit()).as(l.id()).isEqualTo(measures.get(l.measure()).unit());
        });
    }

    @Test
    void everyLimitIsUsedAndEveryUsedOneIsThere() {
        TreeSet<String> used = Faults.ALL.stream()
                .flatMap(f -> f.criteria().stream())
                .flatMap(c -> c.limits().stream())
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(Limits.standard().all().stream().map(Limit::id)).containsExactlyElementsOf(used);
    }

    @Test
    void aCoachMovesALimit() throws IOException {
        Path own = folder.resolve("own.properties");
        Files.writeString(own, "flat-rushed-backswing.tempo.limit = 4.5\n");
        Limits moved = Limits.standard().overriddenBy(own);
        assertThat(moved.limit("flat-rushed-backswing.tempo").limit()).isEqualTo(4.5);
        assertThat(moved.limit("flat-rushed-backswing.settle").limit())
                .isEqualTo(
                        Limits.standard().limit("flat-rushed-backswing.settle").limit());
    }

    @Test
    void aWrongLimitsFileIsRefusedInOneSentence() throws IOException {
        Path unknown = folder.resolve("unknown.properties");
        Files.writeString(unknown, "flat.tempo.limit = 4\n");
        assertThatThrownBy(() -> Limits.standard().overriddenBy(unknown))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("flat.tempo.limit")
                .hasMessageContaining("unknown.properties");
        Path words = folder.resolve("words.properties");
        Files.writeString(words, "flat-rushed-backswing.tempo.limit = slow\n");
        assertThatThrownBy(() -> Limits.standard().overriddenBy(words))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must be a number");
        assertThatThrownBy(() -> Limits.standard().overriddenBy(folder.resolve("none")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("cannot be read");
    }
}
