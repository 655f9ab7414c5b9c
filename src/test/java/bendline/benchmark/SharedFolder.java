package bendline.benchmark;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/** Material that stays beside the project because it is not ours to pass on. */
public final class SharedFolder {

    private SharedFolder() {}

    /** The folder: system property {@code bendline.shared}, else {@code ../shared}. */
    public static Path path() {
        return Path.of(System.getProperty("bendline.shared", "../shared"));
    }

    /** A file of it; the test that asks is skipped with a word where the file is absent. */
    public static Path need(String name) {
        Path file = path().resolve(name);
        Assumptions.assumeTrue(Files.exists(file), () -> "skipped: " + file + " is not here");
        return file;
    }
}
