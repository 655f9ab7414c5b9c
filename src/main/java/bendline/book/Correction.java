package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * What a person said against the machine's marks.
 *
 * @param id never changes
 * @param clipId of which clip
 * @param seconds clip time of the frame
 * @param part {@code grip}, {@code tip} or {@code rig}
 * @param x where it is, pixels of the upright picture; null where it can't be seen
 * @param y where it is; null where it can't be seen
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
        @Nullable String undoneAt) {}
