package bendline.compare;

import java.util.List;

/**
 * One measure in two sets.
 *
 * @param id of the measure
 * @param label for people
 * @param unit of everything here
 * @param inFamily whether a verdict is given; the others are shown only
 * @param a readings before
 * @param b readings after; where casts are compared in pairs, as many and in the same order as a
 * @param shift by how much b lies above a, the measurement's own uncertainty carried in
 * @param pHolm probability of the shift by chance, taking into account how many measures are looked at; NaN outside the family
 * @param scatter how far casts lie from each other within a set, or pairs' differences from each other, one standard deviation
 * @param measurementShare share of that scatter's variance that measuring alone would make, 0 to 1; NaN if not known
 * @param smallestChange what so many casts would have shown four times in five; NaN where no change would have been shown
 * @param castsNeeded casts a set with which a change as large as this one would be shown four times in five; -1 for over 500
 * @param verdict what can be said
 * @param explainedBy what else could have made the difference; the technique is credited only where this is empty
 */
public record Difference(
        String id,
        String label,
        String unit,
        boolean inFamily,
        List<Reading> a,
        List<Reading> b,
        Shift shift,
        double pHolm,
        double scatter,
        double measurementShare,
        double smallestChange,
        int castsNeeded,
        Verdict verdict,
        List<Confounder> explainedBy) {

    /** What can be said of a measure. */
    public enum Verdict {
        /** B lies above A. */
        MORE("more"),
        /** B lies below A. */
        LESS("less"),
        /** A change could have been shown, and none was. */
        NOT_SHOWN("not-shown"),
        /** With so few casts nothing could have been shown. */
        CANNOT_TELL("cannot-tell"),
        /** Not one of the measures chosen beforehand. */
        NOT_TESTED("not-tested");

        private final String id;

        Verdict(String id) {
            this.id = id;
        }

        /** Name in files. */
        public String id() {
            return id;
        }
    }

    /** Copies the lists. */
    public Difference {
        a = List.copyOf(a);
        b = List.copyOf(b);
        explainedBy = List.copyOf(explainedBy);
    }

    /** Whether a change was shown. */
    public boolean shown() {
        return verdict == Verdict.MORE || verdict == Verdict.LESS;
    }

    /** How many casts more each set needs; 0 where the change was shown, -1 where over 500 are needed. */
    public int moreCasts() {
        if (shown()) {
            return 0;
        }
        return castsNeeded < 0 ? -1 : Math.max(1, castsNeeded - Math.min(a.size(), b.size()));
    }

    Difference judged(double adjusted, Verdict as) {
        return new Difference(
                id,
                label,
                unit,
                inFamily,
                a,
                b,
                shift,
                adjusted,
                scatter,
                measurementShare,
                smallestChange,
                castsNeeded,
                as,
                explainedBy);
    }

    Difference powered(double smallest, int casts) {
        return new Difference(
                id,
                label,
                unit,
                inFamily,
                a,
                b,
                shift,
                pHolm,
                scatter,
                measurementShare,
                smallest,
                casts,
                verdict,
                explainedBy);
    }
}
