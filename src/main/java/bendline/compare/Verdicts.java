package bendline.compare;

import bendline.compare.Difference.Verdict;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/** Gives every measure of the family its verdict, and says what so many casts could have shown. */
final class Verdicts {

    private static final double ALARM = 1 - Comparison.LEVEL;

    private final boolean paired;

    /** By numbers of casts, in scatters. */
    private final Map<List<Integer>, Double> smallest = new HashMap<>();

    Verdicts(boolean paired) {
        this.paired = paired;
    }

    List<Difference> judge(List<Difference> all) {
        // A measure that so few casts can't show at all takes no part: it can give no false alarm (Tarone 1990).
        List<Difference> tested =
                all.stream().filter(d -> d.inFamily() && testable(d)).toList();
        double[] p =
                Holm.adjusted(tested.stream().mapToDouble(d -> d.shift().p()).toArray());
        double level = ALARM / Math.max(1, tested.size());
        List<Difference> out = new ArrayList<>();
        for (Difference d : all) {
            int at = tested.indexOf(d);
            if (!d.inFamily()) {
                out.add(d);
            } else if (at < 0) {
                out.add(powered(d.judged(1, Verdict.CANNOT_TELL), level));
            } else {
                out.add(powered(d.judged(p[at], verdict(d, p[at], tested.size())), level));
            }
        }
        return out;
    }

    private static boolean testable(Difference d) {
        return d.shift().smallestP() <= ALARM;
    }

    private static Verdict verdict(Difference d, double p, int count) {
        if (p <= ALARM) {
            return d.shift().estimate() > 0 ? Verdict.MORE : Verdict.LESS;
        }
        return d.shift().smallestP() * count <= ALARM ? Verdict.NOT_SHOWN : Verdict.CANNOT_TELL;
    }

    private Difference powered(Difference d, double level) {
        boolean possible = d.shift().smallestP() <= level;
        double shows = possible
                ? d.scatter() * smallest.computeIfAbsent(List.of(d.a().size(), d.b().size()), n -> inScatters(n, level))
                : Double.NaN;
        double change = Math.abs(d.shift().estimate()) / d.scatter();
        if (!(change > 0) || Double.isInfinite(change)) {
            return d.powered(shows, change > 0 ? fewest(level) : -1);
        }
        DoubleUnaryOperator ofCasts = casts -> paired
                ? Power.ofPairs(change, Power.RANK_EFFICIENCY * casts, level)
                : Power.ofSets(change, Power.RANK_EFFICIENCY * casts, Power.RANK_EFFICIENCY * casts, level);
        return d.powered(shows, Power.casts(ofCasts, fewest(level), Power.guess(change, paired, level)));
    }

    private double inScatters(List<Integer> casts, double level) {
        double n = Power.RANK_EFFICIENCY * casts.get(0);
        double m = Power.RANK_EFFICIENCY * casts.get(1);
        return Power.smallest(c -> paired ? Power.ofPairs(c, Math.max(2, n), level) : Power.ofSets(c, n, m, level));
    }

    /** The fewest casts a set with which an exact test can reach a level at all. */
    private int fewest(double level) {
        int n = 2;
        double reached = paired ? 0.5 : 2.0 / 6;
        while (reached > level) {
            n++;
            reached *= paired ? 0.5 : n * (double) n / (2.0 * n * (2 * n - 1.0));
        }
        return Math.max(3, n);
    }
}
