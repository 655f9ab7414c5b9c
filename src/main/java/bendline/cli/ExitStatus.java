package bendline.cli;

/** What the program tells the shell when it ends. */
final class ExitStatus {

    /** Done. */
    static final int DONE = 0;

    /** The command line can't be carried out as given. */
    static final int WRONG_USE = 2;

    /** The clip can't be used. */
    static final int UNUSABLE_INPUT = 3;

    /** Something went wrong that the user could not have avoided. */
    static final int FAILED = 4;

    private ExitStatus() {}
}
