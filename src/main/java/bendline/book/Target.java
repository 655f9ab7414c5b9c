package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * Something to reach.
 *
 * @param id never changes
 * @param personId for whom; null for whoever keeps the book
 * @param measure id of a measure, or {@code distance}
 * @param value in the measure's unit
 * @param byDay {@code YYYY-MM-DD}; null for some day
 * @param setOn {@code YYYY-MM-DD}
 */
public record Target(
        String id,
        @Nullable String personId,
        String measure,
        double value,
        @Nullable String byDay,
        String setOn) {}
