package bendline.footage;

/**
 * How clip time relates to real time.
 *
 * @param factor capture rate over stored rate; real duration = clip duration / factor; 1 where the clip runs in real time
 * @param basis where the factor comes from, in words for the report
 * @param told whether anything tells it: the file, the user or what moves in the clip; else it is taken to be as played
 */
public record SlowMotion(double factor, String basis, boolean told) {

    /** A factor that the file or the user tells. */
    public SlowMotion(double factor, String basis) {
        this(factor, basis, true);
    }

    /** Checks that the factor is positive and finite. */
    public SlowMotion {
        if (!(factor > 0) || Double.isInfinite(factor)) {
            throw new IllegalArgumentException("slow-motion factor must be positive, got " + factor);
        }
    }
}
