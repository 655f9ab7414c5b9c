/**
 * The order of the stages, and nothing else: a clip and a setup in, one {@link bendline.analysis.ClipAnalysis} out.
 */
@NullMarked
package bendline.analysis;

import org.jspecify.annotations.NullMarked;
