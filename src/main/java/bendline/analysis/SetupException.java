package bendline.analysis;

/** What the user told us can't be true of this clip. The message is one sentence for the user. */
public final class SetupException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param message for the user */
    public SetupException(String message) {
        super(message);
    }
}
