package bendline.stroke;

import org.jspecify.annotations.Nullable;

/**
 * One moment of a cast.
 *
 * @param kind which
 * @param seconds clip time, or null where it cannot be told
 * @param plusMinusSeconds 68 % uncertainty, clip time; NaN where it cannot be told
 * @param frame the frame shown at that time, or the nearest of two on either side where only they show the blank; or null
 * @param basis what it rests on, or why it cannot be told
 */
public record Event(
        EventKind kind,
        @Nullable Double seconds,
        double plusMinusSeconds,
        @Nullable Integer frame,
        String basis) {

    /** An event that cannot be told. */
    public static Event unknown(EventKind kind, String why) {
        return new Event(kind, null, Double.NaN, null, why);
    }
}
