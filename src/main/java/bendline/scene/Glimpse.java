package bendline.scene;

import bendline.image.PackedPlane;

/**
 * One picture of a clip, for a first look at it.
 *
 * @param frame counted from 0
 * @param seconds clip time
 * @param difference from what lies behind, noise units, in reference coordinates
 */
public record Glimpse(int frame, double seconds, PackedPlane difference) {}
