package bendline.benchmark;

import bendline.analysis.Analyser;
import bendline.analysis.Progress;
import bendline.scene.Setup;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Follows the rod through clips as an analysis does, told by the body's hand where the rod begins, and keeps the traces as
 * {@code NAME.trace}: {@code KeepTraces DIR CLIP…}. What is there already is not made again.
 */
public final class KeepTraces {

    private KeepTraces() {}

    /** Runs it. */
    public static void main(String[] args) throws IOException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        for (int i = 1; i < args.length; i++) {
            Path clip = Path.of(args[i]);
            Path file = folder.resolve(clip.getFileName().toString().replace(".mp4", ".trace"));
            if (!Files.exists(file)) {
                TraceFile.write(
                        new Analyser()
                                .analyse(clip, Setup.NONE, Progress.SILENT)
                                .trace(),
                        file);
                System.out.println(file);
            }
        }
    }
}
