/**
 * A tapered elastic blank: what shape a load gives it, and what load a shape speaks of. Metres, newtons, joules, radians in the
 * plane of the bend, y up; the root, where the rod is held, at the origin of a shape.
 *
 * <p>Modelled: an inextensible rod without shear (Euler's elastica) whose bending stiffness falls as a power of a diameter that
 * falls in a straight line ({@link bendline.rod.Taper}); loads of fixed direction on the tip and along the blank
 * ({@link bendline.rod.Load}); large deflections without approximation ({@link bendline.rod.Bending}); small vibrations about the
 * straight rod with a mass on the tip ({@link bendline.rod.NaturalFrequency}). The inverse ({@link bendline.rod.BendReader})
 * looks for the end force whose shape lies nearest to traced points and says how far that force may be off: by the reading, and by
 * the stiffness. Stiffness comes from a test curve, a casting weight, the ring ({@link bendline.rod.Stiffness}) or a still picture
 * under a known weight ({@link bendline.rod.StillBend}); ten invented blanks lie in {@code models/}
 * ({@link bendline.rod.BlankLibrary}).
 *
 * <p>Not modelled: rings, ferrules and reel seat as stiff spots; a spine, that is a stiffness that depends on the side to which
 * the rod bends; damping; hysteresis; shear and the squashing of thin tubes; bend out of the plane; hands that give way. A blank
 * in motion is bent by its own inertia too: who knows its acceleration gives it as a load along the blank.
 *
 * <p>Literature: K. E. Bisshopp and D. C. Drucker, Quart. Appl. Math. 3 (1945) 272; K. Mattiasson, Int. J. Numer. Meth. Engng 17
 * (1981) 145; for tapered beams' frequencies 10.1186/s40712-015-0040-0 (IJMME 2015), table 1.
 */
@NullMarked
package bendline.rod;

import org.jspecify.annotations.NullMarked;
