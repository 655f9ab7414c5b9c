package bendline.analysis;

import bendline.body.BodyTrace;
import bendline.footage.ClipInfo;
import bendline.scene.Setup;
import bendline.trace.Trace;
import java.nio.file.Path;
import java.util.List;

/**
 * Everything learnt from one clip.
 *
 * @param clip the file
 * @param info what the clip is
 * @param setup what the user told us
 * @param trace the rod and the rig through the frames
 * @param quality what the clip is good for
 * @param casts in order of time; empty if nobody casts
 * @param body the caster's body in the frames of the casts
 */
public record ClipAnalysis(
        Path clip, ClipInfo info, Setup setup, Trace trace, Quality quality, List<CastAnalysis> casts, BodyTrace body) {

    /** Copies the list. */
    public ClipAnalysis {
        casts = List.copyOf(casts);
    }

    /** An analysis in which nobody's body was looked at. */
    public ClipAnalysis(Path clip, ClipInfo info, Setup setup, Trace trace, Quality quality, List<CastAnalysis> casts) {
        this(clip, info, setup, trace, quality, casts, BodyTrace.nobody(0, "nobody's body was looked at"));
    }
}
