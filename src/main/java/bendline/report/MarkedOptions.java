package bendline.report;

/**
 * What {@code marked.mp4} shows beyond the clip itself.
 *
 * @param slower how many times slower the stroke plays, from a little before the push until the rod is straight; 1 to 16,
 *     1 for as filmed
 * @param bendPanel whether the blank's curve is drawn live, on a panel beside the picture
 */
public record MarkedOptions(double slower, boolean bendPanel) {

    /** The clip as filmed. */
    public static final MarkedOptions PLAIN = new MarkedOptions(1, false);

    /** Checks ranges. */
    public MarkedOptions {
        if (!(slower >= 1 && slower <= 16)) {
            throw new IllegalArgumentException("the stroke can play 1 to 16 times slower, not " + slower);
        }
    }
}
