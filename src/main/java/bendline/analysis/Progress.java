package bendline.analysis;

/** Told how far long work has come. */
@FunctionalInterface
public interface Progress {

    /** Nobody listens. */
    Progress SILENT = (stage, fraction) -> {};

    /**
     * Told now and then.
     *
     * @param stage what is being done, for people
     * @param fraction 0 to 1 of that stage
     */
    void at(String stage, double fraction);

    /** Told once, before the long work begins, what the clip is good for. */
    default void firstLook(FirstLook look) {}
}
