package bendline.book;

/** The book can't do what was asked. The message is one sentence for the user: what, where, what to do. */
public final class BookException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param message for the user */
    public BookException(String message) {
        super(message);
    }

    /**
     * @param message for the user
     * @param cause for the log
     */
    public BookException(String message, Throwable cause) {
        super(message, cause);
    }
}
