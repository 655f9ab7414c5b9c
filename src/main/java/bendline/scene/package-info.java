/**
 * What stands around the rod: how the camera moved, what the background looks like, and what the user told us about the
 * clip ({@link bendline.scene.Setup}).
 *
 * <p>The background is made from at most sixty stabilised frames, in which moments count by how much moves about them
 * ({@link bendline.scene.SampleWeights}); once a rod has been followed it can be made anew from frames in which it is known
 * what the rod covers ({@link bendline.scene.Scene#behind}). It is kept in grey and, where the clip is stored with colour at
 * half size, in colour, which speaks where brightness is silent ({@link bendline.scene.Backdrop}).
 */
@NullMarked
package bendline.scene;

import org.jspecify.annotations.NullMarked;
