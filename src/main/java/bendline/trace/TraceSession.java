package bendline.trace;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.geometry.Homography;
import bendline.scene.CameraMotion;
import bendline.scene.Mark;
import bendline.scene.Scene;
import bendline.scene.Setup;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/**
 * A clip in which the rod has been followed, kept open so that a person can look, point at what is wrong, and have it followed
 * again from there: nothing is decoded twice, and only frames that a mark reaches are looked at again. Holds temporary files
 * until it is closed. Not thread-safe.
 */
public final class TraceSession implements AutoCloseable {

    private final Footage footage;
    private final ClipInfo info;
    private final Followed followed;
    private final Trace plain;
    private Followed held;
    private List<Grasp> grasps = List.of();
    private @Nullable MarkedRod marked;
    private List<Mark> marks;
    private Trace trace;

    private TraceSession(Footage footage, ClipInfo info, Followed followed) {
        this.footage = footage;
        this.info = info;
        this.followed = followed;
        this.held = followed;
        this.plain = followed.trace(List.of());
        this.marks = List.of();
        this.trace = plain;
    }

    /**
     * Follows the rod.
     *
     * @param scene what the clip was surveyed to; null where it is too short
     * @param setup whose marks are obeyed
     * @param progress told the share of the work that is done, 0 to 1
     * @param first told once, before the rod is followed, what a few pictures show
     */
    public static TraceSession open(
            Footage footage,
            ClipInfo info,
            @Nullable Scene scene,
            Setup setup,
            DoubleConsumer progress,
            Consumer<FirstSight> first) {
        if (scene == null) {
            String few = "the clip has only " + info.frames() + " frames; film the whole cast";
            return new TraceSession(footage, info, Followed.nothing(info, still(info), few));
        }
        double own = setup.marks().isEmpty() ? 1 : 0.6;
        Followed followed =
                RodTracker.follow(footage, info, scene, setup, share -> progress.accept(own * share), first);
        try {
            TraceSession session = new TraceSession(footage, info, followed);
            session.mark(setup.marks(), share -> progress.accept(own + (1 - own) * share));
            return session;
        } catch (RuntimeException e) {
            followed.close();
            throw e;
        }
    }

    /** The trace with the marks that were given last. */
    public Trace trace() {
        return trace;
    }

    /** The marks that the trace obeys. */
    public List<Mark> marks() {
        return marks;
    }

    /**
     * Follows again with other marks. Where none of the marks that give both grip and tip lies on the rod that was followed,
     * another rod is meant, and it is followed from them in the pictures themselves; else what was followed stays and the marks are
     * laid over it.
     *
     * @param others all marks that are to count from now on, pixels of the upright picture, within picture and clip
     * @param progress told the share of the work that is done, 0 to 1
     */
    public Trace mark(List<Mark> others, DoubleConsumer progress) {
        marks = List.copyOf(others);
        List<Mark> whole =
                marks.stream().filter(m -> m.grip() != null && m.tip() != null).toList();
        boolean meant = whole.isEmpty() || whole.stream().anyMatch(m -> MarkedRod.agrees(m, plain, info));
        if (meant) {
            trace = held.trace(marks);
        } else {
            if (marked == null || !marked.keeps(whole, followed.motion())) {
                closeMarked();
                marked = MarkedRod.decode(footage, info, followed.motion(), whole, progress);
            }
            trace = marked.trace(marks);
        }
        return trace;
    }

    /**
     * Takes the rod to be as long as hands on it say, where they tell, and follows its ends again by that. A rod that marks showed
     * is left as it is.
     *
     * @param others where a hand holds it, told by something else than the rod
     * @return whether the trace is another now
     */
    public boolean hold(List<Grasp> others) {
        if (others.equals(grasps)) {
            return false;
        }
        grasps = List.copyOf(others);
        Followed before = held;
        held = followed.held(grasps);
        if (held == before) {
            return false;
        }
        mark(marks, share -> {});
        return true;
    }

    private static CameraMotion still(ClipInfo info) {
        return new CameraMotion(
                info.times().stream().map(t -> Homography.IDENTITY).toList(), 0, false);
    }

    private void closeMarked() {
        if (marked != null) {
            marked.close();
        }
    }

    @Override
    public void close() {
        closeMarked();
        followed.close();
    }
}
