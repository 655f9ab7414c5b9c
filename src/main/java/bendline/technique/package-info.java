/**
 * From the stroke to findings a person can act on: each with its numbers against their limits and the frames that show it.
 */
@NullMarked
package bendline.technique;

import org.jspecify.annotations.NullMarked;
