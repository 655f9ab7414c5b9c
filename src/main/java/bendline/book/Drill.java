package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * Something to practise.
 *
 * @param id never changes
 * @param personId for whom; null for whoever keeps the book
 * @param what in words
 * @param setOn {@code YYYY-MM-DD}
 * @param doneOn {@code YYYY-MM-DD}; null while it is open
 */
public record Drill(
        String id,
        @Nullable String personId,
        String what,
        String setOn,
        @Nullable String doneOn) {}
