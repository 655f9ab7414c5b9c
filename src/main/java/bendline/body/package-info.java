/**
 * Where the body of the person who holds the rod is, how they hold it, and where heads are that may have to be covered.
 *
 * <p>How:
 *
 * <ol>
 *   <li>Two networks that ship with the program (folder {@code models}, with origin, licence and checksums) run on the processor
 *       through TensorFlow Lite; nothing is fetched or sent. One finds people in a square of the picture, the other the joints of the
 *       person in a square ({@link bendline.body.PersonFinder}, {@link bendline.body.JointFinder}). Squares are read straight from the
 *       decoder's own planes, only the pixels that are needed ({@link bendline.body.Crop}).
 *   <li>People are looked for round the rod's grip; the one with a wrist by it is the caster, and is then followed from frame to
 *       frame in a square round the body as the frame before has it, four frames side by side ({@link bendline.body.BodyFollower}). Lost,
 *       the search is made again.
 *   <li>Both wrists are joined with the rod: the one nearer to the tip is the upper hand, the other must lie along the butt. Only frames
 *       in which both show are asked, as a hidden wrist is guessed, mostly on top of the other. Where hands are not on the rod in most
 *       frames, or left and right change places, the answer is that it can't be told which is which; in single frames it can ({@link
 *       bendline.body.RodHold}).
 *   <li>How tall the person would stand follows from trunk and legs ({@link bendline.body.Stature}); a joint's uncertainty is a share
 *       of it.
 * </ol>
 *
 * <p>How good: on filmed people half of the joints lie within 2.3 to 3.3 % of the height (labels read by eye, themselves good to 2 or
 * 3 %). What may be claimed at most is what others reach with several cameras: 30 to 50 mm at hips and knees (Needham et al. 2021, Sci.
 * Rep. 11:20673), mostly under 30 mm elsewhere (Nakano et al. 2020, Front. Sports Act. Living 2:50). On drawn anglers a coordinate's
 * error has a part that stays (0.022 to 0.027 of the height), one that wanders (0.020 to 0.032, forgotten after 0.1 to 0.3 s) and one
 * new in each frame (under 0.014).
 *
 * <p>Tested on made pictures: a mirrored caster, a hood over head and face, legs behind a hedge, somebody half as large again walking past
 * in front. Not tested: a back turned to the camera, real hoods and waders, low sun.
 *
 * <p>Not told: depth and turns in degrees, fingers, faces. The networks invent the face of a turned head and guess hidden joints; such
 * have a low confidence. In the fastest frames the two arms may be exchanged. A person under about a quarter of the square that is
 * searched, in the dusk or mostly out of the picture is missed.
 */
@NullMarked
package bendline.body;

import org.jspecify.annotations.NullMarked;
