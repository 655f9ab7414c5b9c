package bendline.cli;

import bendline.analysis.ClipAnalysis;
import bendline.body.BodyTrace;
import bendline.body.FaceFinder;
import bendline.body.Faces;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;

/** Whether faces are made unrecognisable in pictures that are written. */
final class FaceOptions {

    private static final Faces NONE = new Faces(List.of());

    @Option(
            names = "--blur-faces",
            description =
                    "Make faces unrecognisable in every picture and clip that is written. Somebody very small or with the"
                            + " body out of view may be missed: look before you pass it on.")
    private boolean blur;

    /** The faces to be covered in what is written of an analysis; none unless that was asked for. */
    Faces of(ClipAnalysis analysis, Bars bars) {
        if (!blur) {
            return NONE;
        }
        return FaceFinder.find(
                Footage.open(analysis.clip(), analysis.info()),
                analysis.info(),
                analysis.body(),
                frame -> p -> analysis.trace().motion().toPicture(frame, p),
                done -> bars.at("Looking for faces", done));
    }

    /** The same of a film in which nothing was followed, such as one that was written earlier. */
    Faces of(Path film, Bars bars) {
        if (!blur) {
            return NONE;
        }
        Footage footage = Footage.open(film);
        ClipInfo info = footage.survey(done -> {});
        return FaceFinder.find(
                footage,
                info,
                BodyTrace.nobody(0, "nobody was followed in it"),
                frame -> p -> p,
                done -> bars.at("Looking for faces", done));
    }
}
