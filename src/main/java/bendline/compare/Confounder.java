package bendline.compare;

import java.util.List;

/**
 * Something apart from the stroke that is not the same in both sets, or of which that is not known.
 *
 * @param what which
 * @param inA what set A says, each answer once; empty where it says nothing
 * @param inB what set B says
 * @param state how that stands
 */
public record Confounder(Condition what, List<String> inA, List<String> inB, State state) {

    /** How a condition stands between two sets. */
    public enum State {
        /** The sets differ in it. */
        DIFFERS,
        /** Both sets hold the same mixture of it. */
        MIXED,
        /** At least one cast doesn't tell. */
        NOT_TOLD
    }

    /** Copies the lists. */
    public Confounder {
        inA = List.copyOf(inA);
        inB = List.copyOf(inB);
    }
}
