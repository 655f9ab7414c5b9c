package bendline.book;

/**
 * One time that a clip was analysed.
 *
 * @param id never changes
 * @param clipId which clip
 * @param madeAt ISO instant
 * @param program the version that did it
 * @param folder where its files lie, relative to the book
 * @param casts how many casts it found
 */
public record Analysis(String id, String clipId, String madeAt, String program, String folder, int casts) {}
