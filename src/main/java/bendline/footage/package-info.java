/**
 * A file on disk becomes upright frames with their true times, and frames become a file again. Orientation, pixel aspect,
 * time stamps and slow motion are settled here, once, so that nothing downstream has to know about containers.
 */
@NullMarked
package bendline.footage;

import org.jspecify.annotations.NullMarked;
