package bendline.trace;

import bendline.trace.BlankFitter.Fit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one frame showed of the blank.
 *
 * @param seconds clip time
 * @param choices fitted curves, best first; may be empty
 * @param chosen the one taken, or null
 */
record Look(double seconds, List<Fit> choices, @Nullable Fit chosen) {

    Look {
        choices = List.copyOf(choices);
    }

    Look with(@Nullable Fit fit) {
        return new Look(seconds, choices, fit);
    }
}
