package bendline.book;

/**
 * A clip that is to be analysed, or was.
 *
 * @param clipId which
 * @param state {@code waiting}, {@code done} or {@code failed}
 * @param tries how often it was begun
 * @param says why it failed, for the user; else empty
 * @param askedAt ISO instant
 */
public record Job(String clipId, String state, int tries, String says, String askedAt) {}
