package bendline.analysis;

import bendline.scene.Mark;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.List;

/**
 * Takes out what was called the rig after the rig had gone. Once a cast's release is known, a rig that was lost in its flight is
 * on its way to the water: what lies about the tip at the drop's distance in the seconds after is something else, such as a
 * cloud's edge or a knot of the line. Where a user marked the rig in that time, the user is believed and nothing is taken out.
 */
final class FlownRig {

    /** How long a rig is away at least, seconds: one thrown up at 45° for 45 m without drag flies as long. */
    static final double AWAY_SECONDS = 3;

    /** Longest gap that a flight goes on after, and least time after the release within which it is first seen, seconds. */
    static final double GAP_SECONDS = 0.05;

    private static final String GONE = "it had left with the cast";

    private FlownRig() {}

    /**
     * A trace without rigs that can't be.
     *
     * @param strokes the casts in it, in order
     * @param marks what the user pointed at
     * @param slow clip seconds for a real second
     */
    static Trace removed(Trace trace, List<Stroke> strokes, List<Mark> marks, double slow) {
        List<FrameTrace> frames = new ArrayList<>(trace.frames());
        for (int i = 0; i < strokes.size(); i++) {
            Event release = strokes.get(i).event(EventKind.RELEASE);
            int next = i + 1 < strokes.size() ? strokes.get(i + 1).firstFrame() : frames.size();
            if (release.seconds() != null && !seenAway(marks, release.seconds(), slow)) {
                remove(frames.subList(0, next), release.seconds(), release.plusMinusSeconds(), slow);
            }
        }
        return trace.with(frames);
    }

    private static boolean seenAway(List<Mark> marks, double from, double slow) {
        return marks.stream().anyMatch(m -> m.rig() != null && away(m.seconds(), from, slow));
    }

    private static boolean away(double seconds, double from, double slow) {
        return seconds > from && seconds <= from + AWAY_SECONDS * slow;
    }

    private static void remove(List<FrameTrace> frames, double from, double sd, double slow) {
        double gap = GAP_SECONDS * slow;
        double last = from + Math.max(0, 2 * sd - gap);
        for (int t = 0; t < frames.size(); t++) {
            FrameTrace f = frames.get(t);
            if (!f.rig().seen() || !away(f.seconds(), from, slow)) {
                continue;
            }
            if (f.seconds() <= last + gap) {
                last = Math.max(last, f.seconds());
            } else {
                frames.set(t, f.withRig(Tracked.notSeen(null, GONE)));
            }
        }
    }
}
