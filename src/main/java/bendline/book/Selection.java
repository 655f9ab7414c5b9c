package bendline.book;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Casts of the book by what is written down of them; a null part chooses by nothing.
 *
 * @param session its name
 * @param technique its name
 * @param kit its name
 * @param person by name
 * @param from first day, {@code YYYY-MM-DD}
 * @param to last day
 */
public record Selection(
        @Nullable String session,
        @Nullable String technique,
        @Nullable String kit,
        @Nullable String person,
        @Nullable String from,
        @Nullable String to) {

    /** Every cast. */
    public static final Selection ALL = new Selection(null, null, null, null, null, null);

    /**
     * Reads {@code session=…,technique=…,kit=…,person=…,from=…,to=…}, any of them, {@code day=…} for both ends.
     *
     * @throws BookException where it can't be read
     */
    public static Selection parse(String text) {
        Map<String, String> parts = new TreeMap<>();
        for (String part : text.split(",")) {
            int at = part.indexOf('=');
            String key = at < 0 ? "" : part.substring(0, at).strip().toLowerCase(Locale.ROOT);
            if (!key.matches("session|technique|kit|person|from|to|day") || part.length() == at + 1) {
                throw new BookException("The selection \"" + text + "\" can't be read at \"" + part.strip()
                        + "\"; write for example session=2026-05-03,technique=slow back, with session, technique, kit, person,"
                        + " day, from or to.");
            }
            parts.put(key, part.substring(at + 1).strip());
        }
        String day = parts.get("day");
        return new Selection(
                parts.get("session"),
                parts.get("technique"),
                parts.get("kit"),
                parts.get("person"),
                parts.getOrDefault("from", day),
                parts.getOrDefault("to", day));
    }
}
