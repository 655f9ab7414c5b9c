package bendline.technique;

import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.technique.Finding.State;
import java.util.ArrayList;
import java.util.List;

/** Faults that the rod and the rig in one clip cannot show, each with what it would take. */
final class Unseen {

    private Unseen() {}

    static List<Finding> findings(Stroke stroke) {
        List<Finding> out = new ArrayList<>();
        out.add(softClip(stroke));
        out.add(unseen(
                stroke,
                "uneven",
                "Uneven from cast to cast",
                "Cannot tell from one cast: this needs a set.",
                "What scatters can't be tuned.",
                "Film a set of casts that are meant to be the same."));
        return out;
    }

    private static Finding softClip(Stroke stroke) {
        Event nod = stroke.event(EventKind.CLIP_NOD);
        String id = "soft-clip";
        String title = "Line came to the clip slack";
        String cost = "On a slack line the rig crashes down where it likes, and the distance is not the clipped one.";
        String drill = "Raise the rod to meet the clip, feel the line come tight, and lower the rig on a tight line.";
        if (nod.seconds() == null) {
            String says = "Cannot tell: " + nod.basis() + ".";
            return new Finding(id, title, State.CANNOT_TELL, 0, List.of(), List.of(), "", says, cost, drill);
        }
        String says = "The tip was seen to be pulled, so the line came tight "
                + Sentences.filled("{flightSeconds}", stroke) + " after the release.";
        List<Integer> frames = nod.frame() == null ? List.of() : List.of(nod.frame());
        return new Finding(id, title, State.CLEAR, 0, List.of(), frames, "", says, cost, drill);
    }

    private static Finding unseen(
            Stroke stroke, String id, String title, String why, String cost, String drill, EventKind... evidence) {
        List<Integer> frames = new ArrayList<>();
        for (EventKind k : evidence) {
            Event e = stroke.event(k);
            if (e.frame() != null) {
                frames.add(e.frame());
            }
        }
        return new Finding(id, title, State.CANNOT_TELL, 0, List.of(), frames, "", why, cost, drill);
    }
}
