package bendline.compare;

import bendline.compare.Cast.Turn;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * How a measure moves from cast to cast within a session, whatever the set: warming up, tiring. One slope for all, each set of
 * each session about a level of its own, so that the change that is looked for does not count as drift.
 *
 * @param id of the measure
 * @param label for people
 * @param unit of the measure
 * @param perCast change from one cast to the next
 * @param low lower end of its 95 % interval
 * @param high upper end
 * @param p two-sided probability of such a drift by chance
 * @param pHolm the same, taking into account how many measures are looked at
 */
public record Drift(
        String id, String label, String unit, double perCast, double low, double high, double p, double pHolm) {

    private static final double LEVEL = 0.95;
    private static final int LEAST_FREEDOM = 3;

    /** Whether it is more than chance would do. */
    public boolean shown() {
        return pHolm <= 1 - LEVEL;
    }

    Drift adjusted(double holm) {
        return new Drift(id, label, unit, perCast, low, high, p, holm);
    }

    /** The drift over two sets; nothing where too few casts tell when they were made. */
    static Optional<Drift> of(Difference d) {
        Map<String, List<double[]>> groups = new LinkedHashMap<>();
        collect(groups, "a", d.a());
        collect(groups, "b", d.b());
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        int n = 0;
        for (List<double[]> group : groups.values()) {
            double mx = group.stream().mapToDouble(p -> p[0]).average().orElse(0);
            double my = group.stream().mapToDouble(p -> p[1]).average().orElse(0);
            for (double[] p : group) {
                sxx += (p[0] - mx) * (p[0] - mx);
                sxy += (p[0] - mx) * (p[1] - my);
                syy += (p[1] - my) * (p[1] - my);
                n++;
            }
        }
        int freedom = n - groups.size() - 1;
        if (freedom < LEAST_FREEDOM || !(sxx > 0)) {
            return Optional.empty();
        }
        double slope = sxy / sxx;
        double error = Math.sqrt(Math.max(0, syy - slope * sxy) / freedom / sxx);
        TDistribution t = new TDistribution(null, freedom);
        double half = error * t.inverseCumulativeProbability((1 + LEVEL) / 2);
        double p = error > 0 ? 2 * t.cumulativeProbability(-Math.abs(slope) / error) : slope == 0 ? 1 : 0;
        return Optional.of(new Drift(d.id(), d.label(), d.unit(), slope, slope - half, slope + half, p, p));
    }

    private static void collect(Map<String, List<double[]>> groups, String set, List<Reading> readings) {
        for (Reading r : readings) {
            Turn turn = r.cast().turn();
            if (turn != null) {
                groups.computeIfAbsent(set + "/" + turn.session(), k -> new ArrayList<>())
                        .add(new double[] {turn.number(), r.value()});
            }
        }
    }
}
