package bendline.stroke;

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

    private final String id;

    EventKind(String id) {
        this.id = id;
    }

    /** Name in files. */
    public String id() {
        return id;
    }
}
