package bendline.rod;

/** A shape, a stiffness or a blank that can't be worked out from what was given; the message is one sentence for the user. */
public final class BendException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** With a sentence for the user. */
    public BendException(String message) {
        super(message);
    }
}
