package bendline.compare;

import bendline.compare.Difference.Verdict;
import bendline.stroke.Measure;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Holds two sets of casts against each other. Safe to use from several threads. */
public final class Comparer {

    private final List<String> family;
    private final Pairing pairing;
    private final StillAir stillAir;

    /** Whether casts are held against their neighbours. */
    public enum Pairing {
        /** Where they alternate. */
        WHERE_THEY_ALTERNATE,
        /** First with first, second with second. */
        IN_ORDER,
        /** Never. */
        NEVER
    }

    /**
     * @param family ids of the measures on which a verdict is given, chosen before looking
     * @param pairing whether casts are held against their neighbours
     * @param stillAir takes the wind out of distances
     */
    public Comparer(List<String> family, Pairing pairing, StillAir stillAir) {
        this.family = List.copyOf(family);
        this.pairing = pairing;
        this.stillAir = stillAir;
    }

    /**
     * Compares.
     *
     * @throws ComparisonException where that makes no sense, with one sentence for the user
     */
    public Comparison compare(CastSet first, CastSet second) {
        check(first, second);
        List<Confounder> confounders = Confounders.between(first, second);
        Distances distances = Distances.of(first, second, stillAir);
        CastSet a = distances.a();
        CastSet b = distances.b();
        Sequence sequence = pairing == Pairing.IN_ORDER ? Sequence.paired(a, b) : Sequence.of(a, b);
        boolean paired = pairing != Pairing.NEVER && sequence.kind() == Sequence.Kind.ALTERNATING;
        List<Difference> all = new ArrayList<>();
        for (String id : ids(a, b)) {
            Readings r = paired ? Readings.ofPairs(sequence, a, b, id) : new Readings(a.values(id), b.values(id));
            if (r.a().size() >= 2 && r.b().size() >= 2) {
                all.add(difference(id, r, paired, confounders, a));
            }
        }
        if (all.isEmpty()) {
            String winds = distances.stilled()
                    ? ", as their distances were measured in different winds, which can't be taken out of them"
                    : "";
            throw new ComparisonException("No measure is known in two casts of " + a.label() + " and in two of "
                    + b.label() + ", so there is nothing to compare" + winds
                    + "; film the casts the same way, or measure distances in the same wind.");
        }
        List<Difference> judged = new Verdicts(paired).judge(all);
        List<String> looked = family.stream().filter(id -> known(judged, id)).toList();
        return new Comparison(
                a,
                b,
                confounders,
                sequence,
                paired,
                distances.says(),
                judged,
                drifts(judged),
                Uneven.of(a, looked),
                Uneven.of(b, looked));
    }

    /** The readings of one measure. */
    private record Readings(List<Reading> a, List<Reading> b) {

        static Readings ofPairs(Sequence sequence, CastSet a, CastSet b, String id) {
            List<Reading> inA = new ArrayList<>();
            List<Reading> inB = new ArrayList<>();
            for (Sequence.Pair pair : sequence.pairs()) {
                List<Reading> x = new CastSet(a.label(), List.of(pair.a())).values(id);
                List<Reading> y = new CastSet(b.label(), List.of(pair.b())).values(id);
                if (!x.isEmpty() && !y.isEmpty()) {
                    inA.add(x.get(0));
                    inB.add(y.get(0));
                }
            }
            return new Readings(inA, inB);
        }
    }

    private static boolean known(List<Difference> all, String id) {
        return all.stream().anyMatch(d -> d.id().equals(id));
    }

    private static void check(CastSet a, CastSet b) {
        for (CastSet set : List.of(a, b)) {
            int n = set.casts().size();
            if (n < 2) {
                throw new ComparisonException(set.label() + " holds " + (n == 0 ? "no cast" : "one cast")
                        + "; one cast shows what happened once, so give at least four in each set.");
            }
        }
        Set<String> names = new HashSet<>();
        a.casts().forEach(c -> names.add(c.name()));
        b.casts().stream().filter(c -> names.contains(c.name())).findFirst().ifPresent(c -> {
            throw new ComparisonException("The cast " + c.name() + " is in both sets; choose sets that share no cast.");
        });
    }

    /** The family first, then everything else that both know. */
    private List<String> ids(CastSet a, CastSet b) {
        List<String> out = new ArrayList<>(family);
        List<String> inB = b.known(2);
        a.known(2).stream().filter(id -> inB.contains(id) && !out.contains(id)).forEach(out::add);
        if (!out.contains(Cast.DISTANCE)) {
            out.add(Cast.DISTANCE);
        }
        return out;
    }

    private Difference difference(String id, Readings r, boolean paired, List<Confounder> all, CastSet labels) {
        Shift raw;
        double scatter;
        double measuring;
        if (paired) {
            double[] d = new double[r.a().size()];
            java.util.Arrays.setAll(d, i -> r.b().get(i).value() - r.a().get(i).value());
            raw = Shift.ofPairs(d, Comparison.LEVEL);
            scatter = Math.sqrt(variance(d));
            measuring = Measured.meanSquare(r.a()) + Measured.meanSquare(r.b());
        } else {
            raw = Shift.between(values(r.a()), values(r.b()), Comparison.LEVEL);
            int free = r.a().size() + r.b().size() - 2;
            double pooled = ((r.a().size() - 1) * variance(r.a()) + (r.b().size() - 1) * variance(r.b())) / free;
            scatter = Math.sqrt(pooled);
            measuring = (Measured.meanSquare(r.a()) + Measured.meanSquare(r.b())) / 2;
        }
        Shift shift = Measured.carried(raw, Measured.ofMeans(r.a(), r.b()));
        String unit = unit(labels, id);
        double share = scatter > 0 ? Math.min(1, measuring / (scatter * scatter)) : Double.NaN;
        return new Difference(
                id,
                label(labels, id),
                unit,
                family.contains(id),
                r.a(),
                r.b(),
                shift,
                Double.NaN,
                scatter,
                share,
                Double.NaN,
                -1,
                Verdict.NOT_TESTED,
                Confounders.explaining(id, unit, all));
    }

    private static List<Drift> drifts(List<Difference> judged) {
        List<Drift> found = new ArrayList<>();
        judged.stream().filter(Difference::inFamily).forEach(d -> Drift.of(d).ifPresent(found::add));
        double[] p = Holm.adjusted(found.stream().mapToDouble(Drift::p).toArray());
        List<Drift> out = new ArrayList<>();
        for (int i = 0; i < p.length; i++) {
            out.add(found.get(i).adjusted(p[i]));
        }
        return out;
    }

    static double[] values(List<Reading> readings) {
        return readings.stream().mapToDouble(Reading::value).toArray();
    }

    static double variance(List<Reading> readings) {
        return variance(values(readings));
    }

    /** With one fewer than there are in the denominator; 0 for one number. */
    static double variance(double[] x) {
        return x.length < 2 ? 0 : new org.apache.commons.math3.stat.descriptive.moment.Variance().evaluate(x);
    }

    static String unit(CastSet set, String id) {
        return first(set, id).unit();
    }

    static String label(CastSet set, String id) {
        return first(set, id).label();
    }

    private static Measure first(CastSet set, String id) {
        if (id.equals(Cast.DISTANCE)) {
            return set.casts().get(0).distance();
        }
        return set.casts().stream()
                .flatMap(c -> c.measure(id).stream())
                .findFirst()
                .orElse(Measure.unknown(id, id, "1", "no cast has it"));
    }
}
