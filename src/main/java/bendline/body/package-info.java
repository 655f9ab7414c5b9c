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
 *   <li>Both wrists are joined with the rod: the one nearer to the tip is the upper hand, the other must lie along the butt. Where
 *       that is not so in most frames, or the two can't be told apart, the answer is that it can't be told ({@link
 *       bendline.body.RodHold}).
 *   <li>How tall the person would stand follows from trunk and legs ({@link bendline.body.Stature}); a joint's uncertainty is a share
 *       of it.
 * </ol>
 *
 * <p>Not told: depth and turns in degrees, fingers, faces. The networks invent the face of a turned head and guess hidden joints; such
 * have a low confidence. In the fastest frames the two arms may be exchanged. A person under about a quarter of the square that is
 * searched, in the dusk or mostly out of the picture is missed.
 */
@NullMarked
package bendline.body;

import org.jspecify.annotations.NullMarked;
