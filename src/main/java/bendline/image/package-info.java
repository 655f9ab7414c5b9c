/**
 * Pixels: planes of grey values and what is computed from them. Together with {@code footage} the only place that touches
 * native images; whatever is allocated natively here is released before the method returns.
 */
@NullMarked
package bendline.image;

import org.jspecify.annotations.NullMarked;
