package bendline.benchmark;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.scene.Setup;
import bendline.trace.RodTracker;
import bendline.trace.Trace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Follows the rod through clips and keeps the traces as {@code NAME.trace}: {@code KeepTraces DIR CLIP…}. What is there already
 * is not made again.
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
                Footage footage = Footage.open(clip);
                ClipInfo info = footage.survey(f -> {});
                Trace trace = RodTracker.follow(footage, info, Setup.NONE, f -> {});
                TraceFile.write(trace, file);
                System.out.println(file);
            }
        }
    }
}
