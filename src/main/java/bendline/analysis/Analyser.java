package bendline.analysis;

import bendline.body.BodyTrace;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.FootageException;
import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.stroke.BodyReader;
import bendline.stroke.Stroke;
import bendline.stroke.StrokeTimer;
import bendline.technique.TechniqueReview;
import bendline.trace.RodTracker;
import bendline.trace.Trace;
import java.nio.file.Path;
import java.util.List;

/** Runs the stages in their order: footage, trace, stroke, technique. Holds no state; safe to use from several threads. */
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
        ClipInfo read = timed(footage.survey(f -> progress.at("Reading the clip", f)), setup);
        new MarkCheck(read).check(setup.marks());
        Trace trace = RodTracker.follow(
                footage,
                read,
                setup,
                f -> progress.at("Following the rod", f),
                sight -> progress.firstLook(FirstLook.of(read, sight, setup)));
        ClipInfo played = Timekeeper.inferred(read, trace, setup);
        List<Stroke> strokes = new StrokeTimer().time(trace, setup, played.slowMotion());
        ClipInfo info = Timekeeper.checked(played, trace, setup, strokes);
        BodyTrace body = Caster.follow(footage, info, trace, strokes, f -> progress.at("Following the caster", f));
        BodyReader reader = new BodyReader(trace, setup, info.slowMotion());
        TechniqueReview technique = new TechniqueReview();
        List<CastAnalysis> casts = strokes.stream()
                .map(s -> reader.read(s, body))
                .map(s -> new CastAnalysis(s, technique.review(s)))
                .toList();
        Quality quality = new ClipAppraiser().appraise(info, trace, strokes);
        return new ClipAnalysis(footage.path(), info, setup, trace, quality, casts, body);
    }

    /** What the user says of slow motion comes before what the file says. */
    private static ClipInfo timed(ClipInfo info, Setup setup) {
        Double given = setup.slowMotionFactor();
        if (given == null) {
            return info;
        }
        return info.with(new SlowMotion(given, "as you gave it"));
    }
}
