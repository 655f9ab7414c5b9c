package bendline.rod;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BlankLibraryTest {

    @TempDir
    private Path temp;

    @Test
    void holdsEveryFileOfTheFolderAndNoOther() throws IOException {
        try (var files = Files.list(Path.of("models"))) {
            List<String> names = files.map(f -> f.getFileName().toString())
                    .filter(f -> f.endsWith(".properties"))
                    .map(f -> f.replace(".properties", ""))
                    .toList();
            assertThat(BlankLibrary.all()).extracting(ModelBlank::id).containsExactlyInAnyOrderElementsOf(names);
        }
    }

    @Test
    void coversRodsFromThreeMetresToFourPointThree() {
        assertThat(BlankLibrary.all()).allSatisfy(b -> assertThat(b.lengthM()).isBetween(3.0, 4.3));
        assertThat(BlankLibrary.all()).anySatisfy(b -> assertThat(b.lengthM()).isEqualTo(3.0));
        assertThat(BlankLibrary.all()).anySatisfy(b -> assertThat(b.lengthM()).isEqualTo(4.3));
    }

    /** The traditional rule of sixteen, within the range of weights that each names; common practice, no source. */
    @Test
    void castsWhatItIsSaidToCast() {
        assertThat(BlankLibrary.all()).allSatisfy(b -> {
            double casts = 1000 * Stiffness.testCurveKg(b.bending()) / 16;
            String[] words = b.use().split(" ");
            assertThat(casts).as(b.id()).isBetween(Double.parseDouble(words[0]), Double.parseDouble(words[2]));
        });
    }

    @Test
    void namesTheNearestWhereThereIsNone() {
        assertThatThrownBy(() -> BlankLibrary.named("medum-feder"))
                .isInstanceOf(BendException.class)
                .hasMessageContaining("did you mean medium-feeder?");
    }

    @Test
    void writesAndReadsARodOfOnesOwn() throws IOException {
        ModelBlank one = BlankLibrary.named("heavy-feeder");
        Path file = temp.resolve("mine.properties");
        Files.writeString(file, one.text("made in a test"));
        ModelBlank back = ModelBlank.read(file);
        assertThat(back.bending().stiffnessNm2()).isEqualTo(one.bending().stiffnessNm2(), within(1e-3));
        assertThat(back.bending().taper().stiffnessAt(1))
                .isEqualTo(one.bending().taper().stiffnessAt(1), within(1e-6));
        assertThat(back.lengthM()).isEqualTo(3.9, within(1e-9));
    }

    @Test
    void refusesAFileThatIsNoBlank() throws IOException {
        Path file = temp.resolve("mine.properties");
        Files.writeString(file, "lengthM = long\n");
        assertThatThrownBy(() -> ModelBlank.read(file))
                .isInstanceOf(BendException.class)
                .hasMessageContaining("no number for lengthM");
        assertThatThrownBy(() -> ModelBlank.read(temp.resolve("none.properties")))
                .hasMessageContaining("is not there");
    }
}
