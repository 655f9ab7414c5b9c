package bendline.report;

import bendline.stroke.EventKind;
import java.util.List;
import java.util.Locale;

/** What the moments of a cast are called in front of people. */
public final class EventWords {

    private EventWords() {}

    /** Number under which a moment stands on every picture, in the order in which a good cast has them. */
    static int number(EventKind kind) {
        return List.of(EventKind.values()).indexOf(kind) + 1;
    }

    /** Short name. */
    public static String name(EventKind kind) {
        return switch (kind) {
            case BACKSWING_START -> "Backswing starts";
            case BACKSWING_END -> "Backswing ends";
            case REARMOST -> "Furthest back";
            case FORWARD_START -> "Forward push starts";
            case FASTEST_TURN -> "Fastest turn";
            case PEAK_BEND -> "Most bend";
            case STOP -> "Rod stops";
            case RELEASE -> "Line released";
            case ROD_STRAIGHT -> "Rod straight again";
            case TIP_LOWEST -> "Rod lowest after release";
            case CLIP_NOD -> "Line tight on the clip";
        };
    }

    /** Number and name. */
    public static String label(EventKind kind) {
        return number(kind) + " " + name(kind);
    }

    /** What a measure rests on, the moments in it named as people know them. */
    static String spoken(String basis) {
        String out = basis;
        for (EventKind kind : EventKind.values()) {
            // A name of one word is plain English already, and stands in sentences of its own.
            if (!kind.id().equals(kind.id().toLowerCase(Locale.ROOT))) {
                out = out.replaceAll("\\b" + kind.id() + "\\b", "“" + name(kind) + "”");
            }
        }
        return out;
    }

    /** How the moment is defined. */
    static String meaning(EventKind kind) {
        return switch (kind) {
            case BACKSWING_START -> "the rod first turns backwards faster than a tenth of its later peak";
            case BACKSWING_END -> "the backward turn has died down to a tenth of its peak: the rod has arrived";
            case REARMOST -> "the butt points furthest back";
            case FORWARD_START ->
                "the upper hand moves forward, or the rod turns forward, faster than a tenth of its later"
                        + " peak and stays above it";
            case FASTEST_TURN -> "the rod turns forward fastest";
            case PEAK_BEND -> "hand and tip are closest: the blank holds the most";
            case STOP -> "the forward turn has fallen under a fifth of its peak";
            case RELEASE ->
                "the rig leaves the circle that the drop draws round the tip; where the rig is not seen, the blank"
                        + " unloads";
            case ROD_STRAIGHT -> "the blank is back to 99.5 % of its straight length from hand to tip";
            case TIP_LOWEST -> "the rod points lowest within a second after release";
            case CLIP_NOD -> "the tip is pulled when the line comes tight on the clip";
        };
    }
}
