package bendline.report;

/** The place named for the output can't be used. The message is one sentence for the user: what, where, what to do. */
public final class OutputFolderException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param message for the user */
    public OutputFolderException(String message) {
        super(message);
    }

    /**
     * @param message for the user
     * @param cause for the log
     */
    public OutputFolderException(String message, Throwable cause) {
        super(message, cause);
    }
}
