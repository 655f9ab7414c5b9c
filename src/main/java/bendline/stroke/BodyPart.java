package bendline.stroke;

/** The links of the chain along which a cast is handed on, in the order in which they should peak. */
public enum BodyPart {
    HIPS("hips", "hips"),
    SHOULDERS("shoulders", "shoulders"),
    UPPER_HAND("upperHand", "upper hand"),
    LOWER_HAND("lowerHand", "lower hand"),
    BUTT("butt", "butt"),
    TIP("tip", "tip");

    private final String id;
    private final String label;

    BodyPart(String id, String label) {
        this.id = id;
        this.label = label;
    }

    /** Name in files. */
    public String id() {
        return id;
    }

    /** Words for people. */
    public String label() {
        return label;
    }
}
