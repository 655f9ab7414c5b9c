package bendline.analysis;

import bendline.body.BodyTrace;
import bendline.flight.Outlook;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.SlowMotion;
import bendline.scene.Mark;
import bendline.scene.Scene;
import bendline.scene.Setup;
import bendline.stroke.BodyReader;
import bendline.stroke.Stroke;
import bendline.stroke.StrokeTimer;
import bendline.technique.TechniqueReview;
import bendline.trace.Trace;
import bendline.trace.TraceSession;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * A clip that was analysed and is kept open, so that marks can be added and what they change is told within a second or two:
 * footage, camera and background are not looked at again. Holds temporary files until it is closed. Not thread-safe.
 */
public final class ClipSession implements AutoCloseable {

    /** A trace, how its clip runs, and the casts in it. */
    private record Timed(Trace followed, ClipInfo info, List<Stroke> strokes) {}

    private final Footage footage;
    private final ClipInfo read;
    private final TraceSession trace;
    private Setup setup;
    private @Nullable BodyTrace body;
    private SortedSet<Integer> bodyFrames = new TreeSet<>();
    private ClipAnalysis analysis;

    private ClipSession(Footage footage, ClipInfo read, Setup setup, TraceSession trace, Progress progress) {
        this.footage = footage;
        this.read = read;
        this.setup = setup;
        this.trace = trace;
        this.analysis = told(progress);
    }

    static ClipSession open(Footage footage, Setup setup, Progress progress) {
        Scene scene = Scene.survey(footage, f -> progress.at("Reading the clip", f));
        ClipInfo read = timed(footage.survey(f -> {}), setup);
        new MarkCheck(read).check(setup.marks());
        TraceSession trace = TraceSession.open(
                footage,
                read,
                scene,
                setup.withMarks(ofParts(setup.marks())),
                f -> progress.at("Following the rod", f),
                sight -> progress.firstLook(FirstLook.of(read, sight, setup)));
        try {
            return new ClipSession(footage, read, setup, trace, progress);
        } catch (RuntimeException e) {
            trace.close();
            throw e;
        }
    }

    /** What was learnt, with the marks given last. */
    public ClipAnalysis analysis() {
        return analysis;
    }

    /**
     * The analysis with other marks in place of those before.
     *
     * @param marks all that are to count, pixels of the upright picture and clip seconds
     * @throws SetupException where a mark lies outside the picture or the clip
     */
    public ClipAnalysis mark(List<Mark> marks, Progress progress) {
        new MarkCheck(read).check(marks);
        setup = setup.withMarks(marks);
        List<Mark> parts = ofParts(marks);
        if (!parts.equals(trace.marks())) {
            trace.mark(parts, f -> progress.at("Following the rod from the marks", f));
        }
        analysis = told(progress);
        return analysis;
    }

    /** Where moments are is no matter of following the rod. */
    private static List<Mark> ofParts(List<Mark> marks) {
        return marks.stream().filter(Mark::tellsOfParts).toList();
    }

    private ClipAnalysis told(Progress progress) {
        Timed first = timed(BodyTrace.nobody(0, "not looked for yet"));
        BodyTrace about = body(first, progress);
        if (!trace.hold(Grasps.of(about)) && !StrokeTimer.doubts(first.followed(), setup, about)) {
            return analysed(first, about);
        }
        Timed again = timed(about);
        // A cast that shows only now has not been looked at closely.
        return analysed(again, first.strokes().isEmpty() ? body(again, progress) : about);
    }

    private ClipAnalysis analysed(Timed timed, BodyTrace body) {
        ClipInfo info = timed.info();
        List<Stroke> strokes = timed.strokes();
        Trace followed = FlownRig.removed(
                timed.followed(), strokes, setup.marks(), info.slowMotion().factor());
        BodyReader reader = new BodyReader(followed, setup, info.slowMotion());
        TechniqueReview technique = new TechniqueReview();
        List<CastAnalysis> casts =
                strokes.stream().map(s -> cast(reader.read(s, body), technique)).toList();
        Quality quality = new ClipAppraiser().appraise(info, followed, strokes);
        BodyTrace shown = casts.isEmpty() ? BodyTrace.nobody(0, "there is no cast to look at") : body;
        return new ClipAnalysis(footage.path(), info, setup, followed, quality, casts, shown);
    }

    private Timed timed(BodyTrace body) {
        Trace followed = trace.trace();
        ClipInfo played = Timekeeper.inferred(read, followed, setup);
        List<Stroke> strokes = new StrokeTimer().time(followed, setup, played.slowMotion(), body);
        return new Timed(followed, Timekeeper.checked(played, followed, setup, strokes), strokes);
    }

    /** Followed anew only where casts take in frames that were not looked at before. */
    private BodyTrace body(Timed timed, Progress progress) {
        ClipInfo info = timed.info();
        Trace followed = timed.followed();
        boolean hidden = timed.strokes().isEmpty() && followed.trouble() == null;
        SortedSet<Integer> needed = hidden ? Caster.everywhere(info) : Caster.frames(info, timed.strokes());
        if (body == null || !bodyFrames.containsAll(needed)) {
            body = Caster.follow(footage, info, followed, needed, f -> progress.at("Following the caster", f));
            bodyFrames = needed;
        }
        return body;
    }

    private CastAnalysis cast(Stroke timed, TechniqueReview technique) {
        Outlook outlook = Reach.of(setup, Launched.of(timed));
        Stroke stroke = Aimed.stroke(timed, outlook);
        return new CastAnalysis(stroke, technique.review(stroke), outlook);
    }

    /** What the user says of slow motion comes before what the file says. */
    private static ClipInfo timed(ClipInfo info, Setup setup) {
        Double given = setup.slowMotionFactor();
        if (given == null) {
            return info;
        }
        return info.with(new SlowMotion(given, "as you gave it"));
    }

    @Override
    public void close() {
        trace.close();
    }
}
