package bendline.stroke;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The moments of a cast, in the order in which a good cast has them. ω is the rate of the butt angle. */
public enum EventKind {
    /** Backward rate first exceeds 10 % of its later peak. */
    BACKSWING_START("backswingStart"),
    /** After the backward peak, the rate first falls under 10 % of that peak. */
    BACKSWING_END("backswingEnd"),
    /** Butt angle largest. */
    REARMOST("rearmost"),
    /** Upper hand's forward speed or the forward rate first exceeds 10 % of its later peak and stays above until it. */
    FORWARD_START("forwardStart"),
    /** Forward rate peaks. */
    FASTEST_TURN("fastestTurn"),
    /** Chord ratio smallest. */
    PEAK_BEND("peakBend"),
    /** Forward rate first under 20 % of its peak after fastestTurn. */
    STOP("stop"),
    /** The rig leaves the drop circle round the tip or, unseen, the blank unloads. */
    RELEASE("release"),
    /** First after peakBend with chord ratio back to 0.995. */
    ROD_STRAIGHT("rodStraight"),
    /** Smallest butt angle within 1.0 s (real time) after release. */
    TIP_LOWEST("tipLowest"),
    /** The tip is pulled when the line comes tight on the clip. */
    CLIP_NOD("clipNod");

    /** What can only come after what. Others, such as stop and release, come in either order. */
    private static final Map<EventKind, Set<EventKind>> LATER = Map.of(
            BACKSWING_START, Set.of(BACKSWING_END, REARMOST, FORWARD_START),
            REARMOST, Set.of(FASTEST_TURN, RELEASE),
            FORWARD_START, Set.of(FASTEST_TURN, PEAK_BEND, STOP, RELEASE),
            FASTEST_TURN, Set.of(STOP),
            PEAK_BEND, Set.of(ROD_STRAIGHT),
            RELEASE, Set.of(TIP_LOWEST, CLIP_NOD));

    private final String id;

    EventKind(String id) {
        this.id = id;
    }

    /** The kind of that name in files; empty where there is none. */
    public static Optional<EventKind> of(String id) {
        return Arrays.stream(values()).filter(k -> k.id.equals(id)).findFirst();
    }

    /**
     * The moment that keeps this one from being at a time; empty where it can be.
     *
     * @param told when the moments of the cast are, in the same unit of time
     */
    public Optional<EventKind> against(Map<EventKind, Double> told, double time) {
        return told.entrySet().stream()
                .filter(e -> follows(this, e.getKey()) && e.getValue() <= time
                        || follows(e.getKey(), this) && e.getValue() >= time)
                .map(Map.Entry::getKey)
                .sorted()
                .findFirst();
    }

    private static boolean follows(EventKind first, EventKind then) {
        return LATER.getOrDefault(first, Set.of()).contains(then);
    }

    /** Name in files. */
    public String id() {
        return id;
    }
}
