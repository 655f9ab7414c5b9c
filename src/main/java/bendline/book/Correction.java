package bendline.book;

import bendline.geometry.Point;
import bendline.scene.Mark;
import bendline.stroke.EventKind;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a person said against the machine's marks.
 *
 * @param id never changes
 * @param clipId of which clip
 * @param seconds clip time of the frame
 * @param part {@code grip}, {@code tip} or {@code rig}; or the id of a moment of the cast, which is on this frame
 * @param x where it is, pixels of the upright picture; null where it can't be seen and for a moment
 * @param y as x
 * @param personId who said so; null for whoever keeps the book
 * @param madeAt ISO instant
 * @param undoneAt ISO instant at which it was taken back; null while it counts
 */
public record Correction(
        String id,
        String clipId,
        double seconds,
        String part,
        @Nullable Double x,
        @Nullable Double y,
        @Nullable String personId,
        String madeAt,
        @Nullable String undoneAt) {

    /** Whether it says when a moment is, and not where a part is. */
    public boolean ofMoment() {
        return EventKind.of(part).isPresent();
    }

    /** The same for the analysis. */
    Mark mark() {
        if (ofMoment()) {
            return new Mark(seconds, Map.of(), Set.of(), Set.of(part));
        }
        Mark.Part it = Mark.Part.valueOf(part.toUpperCase(Locale.ROOT));
        return x == null || y == null
                ? new Mark(seconds, Map.of(), Set.of(it))
                : new Mark(seconds, Map.of(it, new Point(x, y)), Set.of());
    }
}
