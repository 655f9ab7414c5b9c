/**
 * How far a rig flies, what it draws behind it, and what would make it fly farther. Plain numbers, SI inside.
 *
 * <h2>What is modelled</h2>
 *
 * <ul>
 *   <li><b>The rig</b>: a point with its weight and a drag that grows with the square of its speed through the air. A lead has the
 *       drag of a ball (0.47 between Reynolds numbers of 1e3 and 2e5; White, Fluid Mechanics, from memory). A feeder is a cylinder
 *       (Matthews, Aeronautical Engineer's Data Book, figure 5.13(b)): behind a stem it flies end on, else it turns over evenly and
 *       shows the mean over a turn, 2/π of either side.
 *   <li><b>The line</b>: a parabola over the chord between tip and rig, with a bow of any depth and direction. It runs along itself
 *       at the speed at which it leaves the spool, is carried by the wind across it, sags by its weight, and is drawn straight by its
 *       tension against the air. With neither tension nor weight it lies where the rig has been, which is exact. Its tension at the
 *       rig is what starts each metre from rest (mass of a metre times speed squared), that again times the <i>loss</i> at
 *       spool, lip and rings, the skin friction along it (White's formula for long cylinders, from memory; a published study of fly
 *       lines gives a fiftieth of the drag across, as this does), the weight between the heights of its ends, less the push of what
 *       already runs.
 *   <li><b>The loss</b> is the one number that can't be known beforehand. That line drawn over the end of a spool needs a pull
 *       proportional to its mass per metre and its speed squared is the theory of over-end unwinding of yarn (Padfield 1958, from
 *       memory); how many times, depends on spool, lip, rings and line and is fitted from casts of known distance. It grows as the
 *       spool empties, by a rope's friction over the steeper way over the lip.
 *   <li><b>The wind</b>: level, along and across, growing with height by a power or logarithmic law.
 *   <li><b>The clip</b>: line and rod stretch like a damped spring that only pulls; the rig is drawn back and swings down.
 *   <li><b>The water</b>: level, below the tip.
 * </ul>
 *
 * <h2>What is not</h2>
 *
 * Lift, spin, and the change of a feeder's attitude; a shock leader's greater mass in the first metres; the inertia of the bow (the
 * accounts of energy miss about 1 % for it); gusts; how the rod is held after the release; loops and twist coming off the
 * spool, other than in the loss; flight that the angler slows with a finger. The launch speed is taken as the same at every angle,
 * although people throw a little harder flat than steep (Linthorne on the shot put), so that the true best angle lies a little lower.
 */
@NullMarked
package bendline.flight;

import org.jspecify.annotations.NullMarked;
