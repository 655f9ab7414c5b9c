/**
 * From traces to the stroke: kinematics, events with their uncertainty, phases and measures. Plain Java data.
 */
@NullMarked
package bendline.stroke;

import org.jspecify.annotations.NullMarked;
