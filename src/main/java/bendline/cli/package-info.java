/**
 * The command line. The only package that prints.
 */
@NullMarked
package bendline.cli;

import org.jspecify.annotations.NullMarked;
