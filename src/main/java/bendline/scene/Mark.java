package bendline.scene;

import bendline.geometry.Point;
import org.jspecify.annotations.Nullable;

/**
 * What a user pointed at on one frame, in pixels of the upright picture.
 *
 * @param seconds clip time of the frame
 * @param grip the upper hand on the rod, or null
 * @param tip the rod tip, or null
 */
public record Mark(
        double seconds, @Nullable Point grip, @Nullable Point tip) {}
