package bendline.report;

/** Files of an analysis can't be read again. The message is one sentence for the user: what, where, what to do. */
public final class AnalysisFileException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param message for the user */
    public AnalysisFileException(String message) {
        super(message);
    }

    /**
     * @param message for the user
     * @param cause for the log
     */
    public AnalysisFileException(String message, Throwable cause) {
        super(message, cause);
    }
}
