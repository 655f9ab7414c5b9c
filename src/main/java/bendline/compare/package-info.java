/**
 * Two sets of casts in, what differs between them out, with an interval, an exact test and what else changed at the same time;
 * and one measure over sessions. Knows nothing of files. Statistics follow Hollander, Wolfe and Chicken, <i>Nonparametric
 * Statistical Methods</i> (rank tests, shift estimates and their intervals), and Holm, Scand. J. Statist. 6 (1979) 65–70.
 */
@NullMarked
package bendline.compare;

import org.jspecify.annotations.NullMarked;
