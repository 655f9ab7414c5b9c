/** A tapered elastic blank. */
@NullMarked
package bendline.rod;

import org.jspecify.annotations.NullMarked;
