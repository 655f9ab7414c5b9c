/**
 * Points, polylines, circles, angles and affine maps in the plane. No units of its own: a caller says whether a length
 * is in pixels or metres. Angles are radians. Knows nothing of images or rods.
 */
@NullMarked
package bendline.geometry;

import org.jspecify.annotations.NullMarked;
