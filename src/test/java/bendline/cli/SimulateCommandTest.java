package bendline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SimulateCommandTest {

    @TempDir
    private Path temp;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int simulate(String what, Path folder, String... more) {
        String[] first = {"simulate", what, "--out", folder.toString()};
        return Main.run(
                new PrintWriter(out, true),
                new PrintWriter(err, true),
                Stream.concat(Stream.of(first), Stream.of(more)).toArray(String[]::new));
    }

    @Test
    void aShortenedScenarioBecomesAClipWithItsTruth() throws IOException {
        assertThat(simulate("nobody", temp, "--scenario-only")).isZero();
        assertThat(names()).containsExactly("nobody.scenario.json");
        Path edited = temp.resolve("mine.json");
        Files.writeString(
                edited,
                Files.readString(temp.resolve("nobody.scenario.json"))
                        .replaceAll("\"seconds\" : [0-9.]+", "\"seconds\" : 0.5")
                        .replaceAll("\"width\" : [0-9]+", "\"width\" : 320")
                        .replaceAll("\"height\" : [0-9]+", "\"height\" : 180")
                        .replace("\"nobody\"", "\"mine\""));
        Path made = temp.resolve("made");
        assertThat(simulate(edited.toString(), made)).as(err.toString()).isZero();
        assertThat(made.resolve("mine.mp4")).isNotEmptyFile();
        assertThat(made.resolve("mine.truth.json")).content().contains("bendline-truth/1");
        assertThat(made.resolve("mine.scenario.json")).exists();
        assertThat(out.toString()).contains(made.resolve("mine.mp4").toString());
        assertThat(simulate(edited.toString(), made)).as("a second time").isEqualTo(2);
        assertThat(err.toString()).contains("already there");
    }

    @Test
    void refusesAnUnknownNameAndAFileThatIsNoScenario() throws IOException {
        assertThat(simulate("brilliant", temp)).isEqualTo(2);
        assertThat(err.toString()).contains("no preset and no file", "good").hasLineCount(1);
        Path broken = Files.writeString(temp.resolve("broken.json"), "{\"name\": 3");
        assertThat(simulate(broken.toString(), temp.resolve("x"))).isEqualTo(3);
        assertThat(err.toString()).contains("broken.json").hasLineCount(2);
        assertThat(names()).containsExactly("broken.json");
    }

    private List<String> names() throws IOException {
        try (Stream<Path> entries = Files.list(temp)) {
            return entries.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }
}
