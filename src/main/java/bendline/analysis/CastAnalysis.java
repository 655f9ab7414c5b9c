package bendline.analysis;

import bendline.stroke.Stroke;
import bendline.technique.Review;

/**
 * One cast of a clip.
 *
 * @param stroke what happened
 * @param review what to make of it
 */
public record CastAnalysis(Stroke stroke, Review review) {}
