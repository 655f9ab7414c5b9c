/**
 * What stands around the rod: how the camera moved, what the background looks like, and what the user told us about the
 * clip ({@link bendline.scene.Setup}).
 */
@NullMarked
package bendline.scene;

import org.jspecify.annotations.NullMarked;
