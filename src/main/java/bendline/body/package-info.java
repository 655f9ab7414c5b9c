/**
 * Where the body of the person who holds the rod is.
 */
@NullMarked
package bendline.body;

import org.jspecify.annotations.NullMarked;
