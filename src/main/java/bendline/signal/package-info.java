/**
 * Sampled series with uncertainties: smoothing, derivatives, crossings, peaks and robust fits. Uneven sample times are the
 * normal case. The numerics library stays behind this package and {@code geometry}.
 */
@NullMarked
package bendline.signal;

import org.jspecify.annotations.NullMarked;
