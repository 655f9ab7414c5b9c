package bendline.analysis;

import bendline.body.BodyFollower;
import bendline.body.BodyTrace;
import bendline.body.HeldRod;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.DoubleConsumer;

/** Has the caster's body followed, only in the frames of casts that need it. */
final class Caster {

    /** Looked at before the backswing and after the release, real seconds. */
    private static final double LEAD_SECONDS = 0.15;

    private static final double TAIL_SECONDS = 0.3;

    /** Round the forward stroke every frame is looked at, real seconds. */
    private static final double CLOSE_SECONDS = 0.4;

    /** Elsewhere so many a real second are enough for a figure to draw and a height to read. */
    private static final double SLOW_RATE_HZ = 30;

    /** Round a cast, real seconds, and so often a real second, it is looked where the hands are. */
    private static final double WIDE_SECONDS = 6;

    private static final double WIDE_RATE_HZ = 12;

    /** Most frames that are looked at where no cast is known. */
    private static final int MOST_EVERYWHERE = 120;

    /** Part of the blank, from the grip on, that points where the butt does. */
    private static final double BUTT_SHARE = 0.2;

    private Caster() {}

    /** The frames of all casts in which the body is looked at. */
    static SortedSet<Integer> frames(ClipInfo info, List<Stroke> strokes) {
        SortedSet<Integer> frames = new TreeSet<>();
        strokes.forEach(s -> frames.addAll(frames(info, s)));
        strokes.forEach(s -> frames.addAll(wide(info, s)));
        return frames;
    }

    /**
     * Frames, spread over a clip in which no cast was found, that tell where the rod is held: a rod that was taken for too short or
     * too long may hide one.
     */
    static SortedSet<Integer> everywhere(ClipInfo info) {
        int n = info.times().size();
        double real = (info.times().get(n - 1) - info.times().get(0))
                / info.slowMotion().factor();
        int wanted = (int) Math.max(1, Math.min(MOST_EVERYWHERE, real * WIDE_RATE_HZ));
        SortedSet<Integer> out = new TreeSet<>();
        for (int k = 0; k < wanted; k++) {
            out.add((int) ((long) k * n / wanted));
        }
        return out;
    }

    /** Frames from which it is known where the rod is held before and after the cast, and if the cast was timed wrongly. */
    private static SortedSet<Integer> wide(ClipInfo info, Stroke stroke) {
        double slow = info.slowMotion().factor();
        double from = info.times().get(stroke.firstFrame()) - WIDE_SECONDS * slow;
        double to = info.times().get(stroke.lastFrame()) + WIDE_SECONDS * slow;
        SortedSet<Integer> out = new TreeSet<>();
        double next = from;
        for (int i = 0; i < info.times().size(); i++) {
            double t = info.times().get(i);
            if (t >= next && t <= to) {
                out.add(i);
                next = t + 0.9 * slow / WIDE_RATE_HZ;
            }
        }
        return out;
    }

    static BodyTrace follow(
            Footage footage, ClipInfo info, Trace trace, SortedSet<Integer> frames, DoubleConsumer progress) {
        return new BodyFollower(footage, trace.motion(), rods(trace), trace.freeLengthPx()).follow(frames, progress);
    }

    /** The frames of a cast in which the body is looked at. */
    static SortedSet<Integer> frames(ClipInfo info, Stroke stroke) {
        double slow = info.slowMotion().factor();
        double first = info.times().get(stroke.firstFrame());
        double last = info.times().get(stroke.lastFrame());
        double from = seconds(stroke, EventKind.BACKSWING_START, first) - LEAD_SECONDS * slow;
        double to = seconds(stroke, EventKind.RELEASE, last) + TAIL_SECONDS * slow;
        double close = seconds(stroke, EventKind.FORWARD_START, from) - CLOSE_SECONDS * slow;
        SortedSet<Integer> out = new TreeSet<>();
        double next = from;
        for (int i = stroke.firstFrame(); i <= stroke.lastFrame(); i++) {
            double t = info.times().get(i);
            if (t >= from && t <= to && (t >= close || t >= next)) {
                out.add(i);
                next = t + 0.9 * slow / SLOW_RATE_HZ;
            }
        }
        return out;
    }

    private static double seconds(Stroke stroke, EventKind kind, double otherwise) {
        Event e = stroke.event(kind);
        Double at = e.seconds();
        return at == null ? otherwise : at;
    }

    /** Where the rod was held, in the frames in which that was seen. */
    private static List<HeldRod> rods(Trace trace) {
        List<HeldRod> out = new ArrayList<>();
        for (FrameTrace f : trace.frames()) {
            Polyline blank = f.blank();
            if (blank != null) {
                Point up = blank.at(BUTT_SHARE * blank.length()).minus(blank.first());
                out.add(new HeldRod(f.frame(), blank.first(), up.times(-1 / Math.max(1e-9, up.norm()))));
            }
        }
        return out;
    }
}
