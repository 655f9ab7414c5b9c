/**
 * Scripted casts with their own rod physics, rendered as phone-like footage with exact truth. Shares no shape model and no
 * fitting code with {@code trace} or {@code rod}, so that it can judge them.
 *
 * <p>A {@link bendline.simulate.Scenario} goes in; {@link bendline.simulate.Simulator} gives the clip and its
 * {@link bendline.simulate.Truth}. The rod is a chain of rigid links with bending stiffness, damping and mass that fall from
 * butt to tip; the hands drive it along smooth scripted moves; the rig is a point mass on a line that only pulls, then flies
 * with quadratic drag. Metres in the plane of the cast, x towards the water from the middle between the feet, y up.
 *
 * <p>Known limits: the cast stays in one plane; rod, line and rig are blurred over the exposure, the angler's body is not;
 * no rolling shutter; no wind on the flight; the line never comes tight on a clip; between two casts the far part of the
 * retrieve is left out.
 */
@NullMarked
package bendline.simulate;

import org.jspecify.annotations.NullMarked;
