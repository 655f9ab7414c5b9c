/**
 * Scripted casts with their own rod physics, rendered as phone-like footage with exact truth. Shares no shape model and no
 * fitting code with {@code trace} or {@code rod}, so that it can judge them.
 */
@NullMarked
package bendline.simulate;

import org.jspecify.annotations.NullMarked;
