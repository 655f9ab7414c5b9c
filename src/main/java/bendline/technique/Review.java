package bendline.technique;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a coach would say of one stroke.
 *
 * @param findings every fault looked for
 * @param good what was good, one sentence each with its number
 * @param next the one finding to work on next, or null
 * @param why why that one, for people
 */
public record Review(
        List<Finding> findings, List<String> good, @Nullable Finding next, String why) {

    /** Copies the lists. */
    public Review {
        findings = List.copyOf(findings);
        good = List.copyOf(good);
    }
}
