/**
 * Follows the grip, the blank, the tip and the rig through the frames. Positions are in the reference picture (the first
 * frame after the camera motion is taken out); each carries a 68 % radius or is "not seen" with a reason.
 *
 * <p>How:
 *
 * <ol>
 *   <li>Every frame is compared with the background's range in a 3 × 3 neighbourhood ({@link bendline.scene.Background}).
 *   <li>A few scouting frames give the pivot, where the moving thin lines meet from many directions, and the rod's length.
 *   <li>In every frame by itself all thin curves out of the pivot are found in log-polar coordinates by a dynamic programme
 *       over radius, direction and slope; each is straightened into a strip and fitted to sub-pixel accuracy.
 *   <li>One curve a frame is chosen over all frames at once; curves that show gaps, kink for one frame or lead into the
 *       ground are dropped and looked for again where their neighbours in time say.
 *   <li>The tip is where the blank ends on its own line; the rod's one length and the hands' smooth way put back tips that
 *       were cut short.
 *   <li>The rig is the compact thing that keeps to the drop's circle round the tip until it flies.
 *   <li>Marks check the rod that was found, or start a follower that needs no background.
 * </ol>
 *
 * <p>Tried and dropped, with what it cost on seven rendered clips: the plain difference from the median, instead of the
 * neighbourhood's range, left the blank 0.4 to 0.8 px off across and lost it in foliage (now 0.15 to 0.3 px); an affine
 * camera left up to 3 px at the corners; a fixed threshold on the ridge instead of the frame's own clutter let curves run
 * through clouds; fitting up to the hands bent the direction at the grip by 10° (now 1° in the median); a bump of the hand
 * in the mean ridge strength was 11 % wrong for the grip; looking for the rod's ends with its whole length was fooled by
 * legs.
 *
 * <p>Known weakness: a rod that rests longer in one place than it moves becomes background there and is not seen; a blank
 * of the foliage's own grey is cut short.
 */
@NullMarked
package bendline.trace;

import org.jspecify.annotations.NullMarked;
