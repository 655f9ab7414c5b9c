/**
 * Writers: one per format. They read an analysis and never change it.
 */
@NullMarked
package bendline.report;

import org.jspecify.annotations.NullMarked;
