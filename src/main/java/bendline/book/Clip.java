package bendline.book;

/**
 * A clip that the book keeps.
 *
 * @param id never changes
 * @param sha256 of its bytes, by which it is known again wherever it lies
 * @param name as it came
 * @param file where it lies, relative to the book
 * @param bytes its size
 */
public record Clip(String id, String sha256, String name, String file, long bytes) {}
