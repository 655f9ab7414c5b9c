package bendline.simulate;

/** How plainly a fault was scripted into a cast. */
public enum Severity {
    /** Not there: to report it is a false alarm. */
    NONE,
    /** So little that either verdict is fair. */
    BORDERLINE,
    /** There, not strongly. */
    MILD,
    /** Plainly there: to overlook it is a miss. */
    CLEAR;

    /** The word for a degree of a fault from 0 (none of it) to 1 (all of it). */
    public static Severity of(double degree) {
        if (degree <= 0.15) {
            return NONE;
        }
        if (degree < 0.45) {
            return BORDERLINE;
        }
        return degree < 0.7 ? MILD : CLEAR;
    }
}
