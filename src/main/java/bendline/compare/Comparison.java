package bendline.compare;

import java.util.List;

/**
 * What came of holding two sets against each other.
 *
 * @param a before
 * @param b after
 * @param confounders what else changed, is mixed or isn't told; what differs first
 * @param sequence in which order the casts were made
 * @param paired whether neighbours were held against each other
 * @param distances how distances were made comparable, or why they could not be, in words
 * @param differences measures with a verdict first, in the order of the family; then those only looked at
 * @param drifts how the measures with a verdict move from cast to cast; empty where the order isn't known
 * @param unevenA how even set A is
 * @param unevenB how even set B is
 */
public record Comparison(
        CastSet a,
        CastSet b,
        List<Confounder> confounders,
        Sequence sequence,
        boolean paired,
        String distances,
        List<Difference> differences,
        List<Drift> drifts,
        Uneven unevenA,
        Uneven unevenB) {

    /** Level of tests and intervals: one false alarm in twenty comparisons, at most. */
    public static final double LEVEL = 0.95;

    /** Copies the lists. */
    public Comparison {
        confounders = List.copyOf(confounders);
        differences = List.copyOf(differences);
        drifts = List.copyOf(drifts);
    }

    /** The measures with a verdict. */
    public List<Difference> family() {
        return differences.stream().filter(Difference::inFamily).toList();
    }

    /** What certainly changed besides the stroke. */
    public List<Confounder> differing() {
        return confounders.stream()
                .filter(c -> c.state() == Confounder.State.DIFFERS)
                .toList();
    }
}
