package bendline.body;

import bendline.geometry.Point;

/**
 * One joint in one frame.
 *
 * @param place reference-picture pixels
 * @param confidence that it shows, 0 to 1; under {@link #SHOWS} it is a guess from the rest of the body
 * @param sdPx radius within which the true joint lies with 68 % probability, pixels
 */
public record JointSight(Point place, double confidence, double sdPx) {

    /** Confidence from which a joint counts as seen. */
    public static final double SHOWS = 0.5;

    /** Whether it was seen rather than guessed. */
    public boolean shows() {
        return confidence >= SHOWS;
    }
}
