package bendline.compare;

/** What may differ between casts apart from the stroke itself. */
public enum Condition {
    PERSON("the angler", Kind.PERSON),
    HANDED("the leading hand", Kind.PERSON),
    ROD("the rod", Kind.KIT),
    REEL("the reel", Kind.KIT),
    LINE("the line", Kind.KIT),
    LEADER("the leader", Kind.KIT),
    RIG("the rig", Kind.KIT),
    RIG_MASS("the weight of the rig as cast", Kind.KIT),
    STEM("the stem", Kind.KIT),
    DROP("the drop", Kind.KIT),
    WIND("the wind", Kind.WIND),
    PLACE("the place", Kind.PLACE),
    WATER("the water", Kind.PLACE),
    DAY("the day", Kind.DAY),
    CAMERA_SIDE("the side the phone stood on", Kind.CAMERA),
    PICTURE("the size of the picture", Kind.CAMERA),
    FRAME_RATE("the frame rate", Kind.RATE),
    PROGRAM("the program's version", Kind.PROGRAM);

    /** What sort of thing it is, which decides what it can explain. */
    public enum Kind {
        PERSON,
        KIT,
        WIND,
        PLACE,
        DAY,
        CAMERA,
        RATE,
        PROGRAM
    }

    private final String label;
    private final Kind kind;

    Condition(String label, Kind kind) {
        this.label = label;
        this.kind = kind;
    }

    /** For people, with its article. */
    public String label() {
        return label;
    }

    /** What sort of thing it is. */
    public Kind kind() {
        return kind;
    }
}
