package bendline.scene;

import bendline.image.PackedPlane;

/**
 * One picture of a clip, for a first impression.
 *
 * @param seconds clip time
 * @param difference from what lies behind, noise units, in reference coordinates
 */
public record Glimpse(double seconds, PackedPlane difference) {}
