package bendline.book;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One outing.
 *
 * @param id never changes
 * @param name for choosing it, the day unless told otherwise; unique
 * @param day {@code YYYY-MM-DD}
 * @param personId who cast
 * @param place free text
 * @param water free text
 * @param windMps metres a second where the angler stood
 * @param windFromDeg where it comes from seen along the cast: 0 in the face, 90 from the right, 180 from behind
 * @param cameraSide free text
 * @param notes free text
 */
public record Session(
        String id,
        String name,
        String day,
        @Nullable String personId,
        @Nullable String place,
        @Nullable String water,
        @Nullable Double windMps,
        @Nullable Double windFromDeg,
        @Nullable String cameraSide,
        String notes) {

    /** The wind in words; null where nobody told it. */
    public @Nullable String wind() {
        if (windMps == null) {
            return null;
        }
        return String.format(Locale.ROOT, "%.1f m/s", windMps)
                + (windFromDeg == null ? "" : String.format(Locale.ROOT, " from %.0f°", windFromDeg));
    }
}
