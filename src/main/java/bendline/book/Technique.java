package bendline.book;

/**
 * A way of casting that is being tried.
 *
 * @param id never changes
 * @param name for choosing it; unique
 * @param what what is done otherwise, in words
 */
public record Technique(String id, String name, String what) {}
