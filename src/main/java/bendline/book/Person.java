package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * Somebody who casts.
 *
 * @param id never changes
 * @param name as the person wants to be called; unique
 * @param handed {@code left} or {@code right}: the hand at the reel; null where not told
 * @param notes free text
 */
public record Person(String id, String name, @Nullable String handed, String notes) {}
