package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.PictureReader;
import bendline.image.VideoPlanes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** What {@code marked.mp4} costs: a cast of formulas is drawn over the frames of any clip, so that no analysis is needed first. */
public final class MarkedClipCost {

    private MarkedClipCost() {}

    /** Writes the marked clip with its panel into a folder that is thrown away. */
    public static void write(Path clip) throws IOException {
        ClipInfo info = Footage.open(clip).survey(f -> {});
        write(RetimedCast.on(clip, info));
    }

    /** Length of a clip in seconds. */
    public static double seconds(Path clip) {
        return Footage.open(clip).survey(f -> {}).durationSeconds();
    }

    private static void write(ClipAnalysis analysis) throws IOException {
        Path file = Files.createTempFile("marked", ".mp4");
        ReportOptions plain = ReportOptions.PLAIN;
        ReportOptions options =
                new ReportOptions(plain.veiled(), plain.reader(), false, new MarkedOptions(4, true), null, null);
        try (PictureReader reader =
                        Footage.open(analysis.clip(), analysis.info()).pictures();
                MarkedClip marked = new MarkedClip(analysis, file, options)) {
            while (reader.advance()) {
                if (!marked.wants(reader.index())) {
                    continue;
                }
                VideoPlanes planes = reader.planes();
                marked.add(
                        reader.index(),
                        reader.seconds(),
                        planes == null ? reader.picture().planes() : planes);
            }
        } finally {
            Files.delete(file);
        }
    }
}
