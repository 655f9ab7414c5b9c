package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * A clip on its way in.
 *
 * @param id under which its bytes lie
 * @param personId whose it is; null for whoever keeps the book
 * @param name as it came
 * @param bytes its full size
 * @param begunAt ISO instant
 */
public record Upload(String id, @Nullable String personId, String name, long bytes, String begunAt) {}
