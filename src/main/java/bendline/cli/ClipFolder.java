package bendline.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Clips in a folder. */
final class ClipFolder {

    private ClipFolder() {}

    /** The clips that lie in a folder itself, by name. */
    static List<Path> clips(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(f -> f.getFileName()
                            .toString()
                            .toLowerCase(Locale.ROOT)
                            .matches("[^.].*\\.(mp4|mov|m4v|avi|mkv|webm)"))
                    .sorted()
                    .toList();
        }
    }
}
