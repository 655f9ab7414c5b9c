package bendline.compare;

/** Two sets that can't be compared. The message is one sentence for the user: what, where, what to do. */
public final class ComparisonException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param message for the user */
    public ComparisonException(String message) {
        super(message);
    }
}
