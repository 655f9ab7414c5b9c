package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.analysis.Quality;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.PictureReader;
import bendline.geometry.Homography;
import bendline.image.VideoPlanes;
import bendline.scene.CameraMotion;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** What {@code marked.mp4} costs: a cast of formulas is drawn over the frames of any clip, so that no analysis is needed first. */
public final class MarkedClipCost {

    private MarkedClipCost() {}

    /** Writes the marked clip with its panel into a folder that is thrown away. */
    public static void write(Path clip) throws IOException {
        ClipInfo info = Footage.open(clip).survey(f -> {});
        write(over(clip, info));
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

    /** The cast's frames, the last of them held to the end of the clip. */
    private static ClipAnalysis over(Path clip, ClipInfo info) {
        ClipAnalysis cast = AnalyticCast.analysis(clip);
        List<FrameTrace> known = cast.trace().frames();
        List<FrameTrace> frames = new ArrayList<>();
        for (int i = 0; i < Math.max(info.frames(), known.size()); i++) {
            FrameTrace f = known.get(Math.min(i, known.size() - 1));
            frames.add(
                    new FrameTrace(i, i / AnalyticCast.RATE, f.grip(), f.tip(), f.rig(), f.blank(), f.buttAngleSd()));
        }
        CameraMotion still = new CameraMotion(Collections.nCopies(frames.size(), Homography.IDENTITY), 0.2, true);
        Trace trace = new Trace(info.width(), info.height(), frames, still, AnalyticCast.FREE_PX, 1.5, null);
        Quality quality = cast.quality();
        return new ClipAnalysis(clip, info, cast.setup(), trace, quality, cast.casts());
    }
}
