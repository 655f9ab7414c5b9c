/**
 * Follows the grip, the blank, the tip and the rig through the frames. Positions are in the reference picture (the first
 * frame after the camera motion is taken out); each carries a 68 % radius or is "not seen" with a reason.
 */
@NullMarked
package bendline.trace;

import org.jspecify.annotations.NullMarked;
