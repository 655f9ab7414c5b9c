package bendline.stroke;

import bendline.body.RodHold;
import java.util.List;

/**
 * What the caster's body did in one cast, besides its measures.
 *
 * @param peaks one a link of the chain, in the order in which they should come
 * @param hold how the rod was held
 * @param seen frames of the cast in which the body was followed
 * @param note who was followed, or why nobody could be
 */
public record BodyMotion(List<Peak> peaks, RodHold hold, int seen, String note) {

    /** Copies the list. */
    public BodyMotion {
        peaks = List.copyOf(peaks);
    }
}
