package bendline.footage;

/** The clip cannot be used. The message is one sentence for the user: what, where, what to do. */
public final class FootageException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param message for the user */
    public FootageException(String message) {
        super(message);
    }

    /**
     * @param message for the user
     * @param cause for the log
     */
    public FootageException(String message, Throwable cause) {
        super(message, cause);
    }
}
