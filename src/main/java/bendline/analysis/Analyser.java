package bendline.analysis;

import bendline.footage.Footage;
import bendline.footage.FootageException;
import bendline.scene.Setup;
import java.nio.file.Path;

/** Runs the stages in their order: footage, trace, stroke, flight, technique. Holds no state; safe to use from several threads. */
public final class Analyser {

    /**
     * Analyses a clip.
     *
     * @param clip the file
     * @param setup what the user told; marks are pixels of the upright picture and clip seconds
     * @param progress told each stage in words and how far it has come
     * @return what was learnt; no casts where nobody casts or no rod was found, with the reason in the quality
     * @throws FootageException where the clip can't be used
     * @throws SetupException where a mark lies outside the picture or the clip
     */
    public ClipAnalysis analyse(Path clip, Setup setup, Progress progress) {
        return analyse(Footage.open(clip), setup, progress);
    }

    /** The same for a clip that is open already, for example one that was turned by hand. */
    public ClipAnalysis analyse(Footage footage, Setup setup, Progress progress) {
        try (ClipSession session = open(footage, setup, progress)) {
            return session.analysis();
        }
    }

    /** The same, kept open for marks to be added; to be closed by the caller. */
    public ClipSession open(Footage footage, Setup setup, Progress progress) {
        return ClipSession.open(footage, setup, progress);
    }
}
