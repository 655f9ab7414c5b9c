package bendline.analysis;

import bendline.flight.Outlook;
import bendline.scene.Setup;
import bendline.stroke.Stroke;
import bendline.technique.Review;

/**
 * One cast of a clip.
 *
 * @param stroke what happened
 * @param review what to make of it
 * @param outlook how far it should go and where more metres are
 */
public record CastAnalysis(Stroke stroke, Review review, Outlook outlook) {

    /** Without anything known of rig and tackle. */
    public CastAnalysis(Stroke stroke, Review review) {
        this(stroke, review, Reach.of(Setup.NONE, Launched.of(stroke)));
    }
}
