package bendline.compare;

import bendline.compare.Cast.Turn;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * In which order the casts of two sets were made.
 *
 * @param kind the pattern
 * @param pairs neighbours of which one is of each set, before and after; empty unless they alternate
 * @param gap how many casts later, on average, b was made in the same session than a; NaN where that isn't known
 */
public record Sequence(Kind kind, List<Pair> pairs, double gap) {

    /** Patterns. */
    public enum Kind {
        /** Neighbouring casts are of different sets, so that each can be held against its neighbour. */
        ALTERNATING,
        /** All of a, then all of b. */
        A_THEN_B,
        /** All of b, then all of a. */
        B_THEN_A,
        /** In other sessions. */
        APART,
        /** Through each other, but not in pairs. */
        MIXED,
        /** Not written down. */
        NOT_KNOWN
    }

    /**
     * Two casts to be held against each other.
     *
     * @param a of set A
     * @param b of set B
     */
    public record Pair(Cast a, Cast b) {}

    private record Placed(Cast cast, boolean ofB, Turn turn) {}

    /** Copies the list. */
    public Sequence {
        pairs = List.copyOf(pairs);
    }

    /** Reads the order off the turns of the casts. */
    static Sequence of(CastSet a, CastSet b) {
        List<Placed> all = new ArrayList<>();
        for (Cast c : a.casts()) {
            if (c.turn() != null) {
                all.add(new Placed(c, false, c.turn()));
            }
        }
        for (Cast c : b.casts()) {
            if (c.turn() != null) {
                all.add(new Placed(c, true, c.turn()));
            }
        }
        if (all.size() < a.casts().size() + b.casts().size()) {
            return new Sequence(Kind.NOT_KNOWN, List.of(), Double.NaN);
        }
        all.sort(Comparator.comparing((Placed p) -> p.turn().session())
                .thenComparing(p -> p.turn().number()));
        List<Pair> pairs = pairs(all);
        return pairs.isEmpty()
                ? new Sequence(kind(all), List.of(), gap(all))
                : new Sequence(Kind.ALTERNATING, pairs, gap(all));
    }

    /** The pairs that were told to be such: first with first, second with second. */
    static Sequence paired(CastSet a, CastSet b) {
        if (a.casts().size() != b.casts().size()) {
            throw new ComparisonException("Pairs need as many casts in one set as in the other, and " + a.label()
                    + " has "
                    + a.casts().size() + ", " + b.label() + " has " + b.casts().size()
                    + "; leave out the odd ones, or compare them as two sets.");
        }
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < a.casts().size(); i++) {
            pairs.add(new Pair(a.casts().get(i), b.casts().get(i)));
        }
        return new Sequence(Kind.ALTERNATING, pairs, of(a, b).gap());
    }

    private static List<Pair> pairs(List<Placed> all) {
        List<Pair> out = new ArrayList<>();
        for (int i = 0; i + 1 < all.size(); i += 2) {
            Placed first = all.get(i);
            Placed second = all.get(i + 1);
            if (first.ofB() == second.ofB()
                    || !first.turn().session().equals(second.turn().session())) {
                return List.of();
            }
            out.add(first.ofB() ? new Pair(second.cast(), first.cast()) : new Pair(first.cast(), second.cast()));
        }
        // Two casts alone are a pair whichever way they were made.
        return all.size() % 2 == 1 || out.size() < 2 ? List.of() : out;
    }

    private static Kind kind(List<Placed> all) {
        boolean together = all.stream().map(p -> p.turn().session()).distinct().count()
                < all.stream()
                        .map(p -> p.turn().session() + "/" + p.ofB())
                        .distinct()
                        .count();
        if (!together) {
            return Kind.APART;
        }
        int changes = 0;
        for (int i = 1; i < all.size(); i++) {
            boolean same =
                    all.get(i).turn().session().equals(all.get(i - 1).turn().session());
            changes += same && all.get(i).ofB() != all.get(i - 1).ofB() ? 1 : 0;
        }
        long sessions = all.stream().map(p -> p.turn().session()).distinct().count();
        if (changes > sessions) {
            return Kind.MIXED;
        }
        return all.get(0).ofB() ? Kind.B_THEN_A : Kind.A_THEN_B;
    }

    private static double gap(List<Placed> all) {
        double a = mean(all, false);
        double b = mean(all, true);
        boolean one = all.stream().map(p -> p.turn().session()).distinct().count() == 1;
        return one ? b - a : Double.NaN;
    }

    private static double mean(List<Placed> all, boolean ofB) {
        return all.stream()
                .filter(p -> p.ofB() == ofB)
                .mapToInt(p -> p.turn().number())
                .average()
                .orElse(Double.NaN);
    }
}
