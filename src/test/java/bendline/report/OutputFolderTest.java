package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {

    @TempDir
    private Path temp;

    @Test
    void appearsWholeAndLeavesNothingBeside() throws IOException {
        try (OutputFolder folder = OutputFolder.beside(temp.resolve("a/b"))) {
            Files.writeString(folder.staging().resolve("x"), "x");
            assertThat(temp.resolve("a/b")).doesNotExist();
            folder.publish();
        }
        assertThat(temp.resolve("a/b/x")).hasContent("x");
        assertThat(names(temp.resolve("a"))).containsExactly("b");
    }

    @Test
    void isGoneIfItIsNotPublished() throws IOException {
        try (OutputFolder folder = OutputFolder.beside(temp.resolve("a"))) {
            Files.writeString(folder.staging().resolve("x"), "x");
        }
        assertThat(names(temp)).isEmpty();
    }

    @Test
    void replacesAnEmptyFolder() throws IOException {
        Files.createDirectory(temp.resolve("a"));
        try (OutputFolder folder = OutputFolder.beside(temp.resolve("a"))) {
            Files.writeString(folder.staging().resolve("x"), "x");
            folder.publish();
        }
        assertThat(names(temp.resolve("a"))).containsExactly("x");
    }

    @Test
    void refusesAFolderThatHoldsSomething() throws IOException {
        Files.createDirectory(temp.resolve("a"));
        Files.writeString(temp.resolve("a/mine"), "mine");
        assertThatThrownBy(() -> OutputFolder.check(temp.resolve("a")))
                .isInstanceOf(OutputFolderException.class)
                .hasMessageContaining("not empty");
        assertThat(temp.resolve("a/mine")).hasContent("mine");
    }

    @Test
    void refusesAFileOfThatNameAndAParentThatIsAFile() throws IOException {
        Files.writeString(temp.resolve("a"), "a");
        assertThatThrownBy(() -> OutputFolder.check(temp.resolve("a"))).hasMessageContaining("not a folder");
        assertThatThrownBy(() -> OutputFolder.check(temp.resolve("a/b"))).hasMessageContaining("not a folder");
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }
}
