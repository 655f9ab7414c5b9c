package bendline.compare;

import bendline.technique.Finding.State;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.jspecify.annotations.Nullable;

/**
 * The finding {@code uneven} over a set: which measure scatters most from cast to cast, in steps that a coach would call one.
 *
 * @param state found where a measure scatters by more than a step even after what measuring adds is taken out and within its
 *     uncertainty; clear where none does; else cannot tell
 * @param most the measure that scatters most; null where none could be looked at
 * @param all every measure looked at, the most uneven first
 * @param says in words why it can't be told; empty where it can
 */
public record Uneven(State state, @Nullable Scatter most, List<Scatter> all, String says) {

    /** Name in files. */
    public static final String ID = "uneven";

    private static final int LEAST_CASTS = 4;

    /**
     * How one measure scatters.
     *
     * @param id of the measure
     * @param label for people
     * @param unit of the measure
     * @param sd from cast to cast, measuring taken out
     * @param low lower end of its 68 % interval
     * @param high upper end
     * @param step what a coach would call a step
     * @param lowest the cast with the smallest value, to look at
     * @param highest the cast with the largest
     */
    public record Scatter(
            String id,
            String label,
            String unit,
            double sd,
            double low,
            double high,
            double step,
            Reading lowest,
            Reading highest) {

        double steps() {
            return sd / step;
        }
    }

    /** Copies the list. */
    public Uneven {
        all = List.copyOf(all);
    }

    /** Looks at every measure that has a step. */
    static Uneven of(CastSet set, List<String> measures) {
        List<Scatter> all = new ArrayList<>();
        for (String id : measures) {
            List<Reading> values = set.values(id);
            if (values.size() >= LEAST_CASTS) {
                String unit = Comparer.unit(set, id);
                double step = Family.step(id, unit);
                if (step > 0) {
                    all.add(scatter(id, Comparer.label(set, id), unit, step, values));
                }
            }
        }
        if (all.isEmpty()) {
            return new Uneven(
                    State.CANNOT_TELL,
                    null,
                    all,
                    "no measure is known in " + LEAST_CASTS
                            + " casts, which is the fewest that show how casts scatter");
        }
        all.sort(Comparator.comparing(Scatter::steps).reversed());
        Scatter most = all.get(0);
        if (all.stream().anyMatch(s -> s.low() > s.step())) {
            return new Uneven(State.FOUND, most, all, "");
        }
        boolean clear = all.stream().allMatch(s -> s.high() < s.step());
        return clear
                ? new Uneven(State.CLEAR, most, all, "")
                : new Uneven(State.CANNOT_TELL, most, all, "the scatter is within its own uncertainty of a step");
    }

    private static Scatter scatter(String id, String label, String unit, double step, List<Reading> values) {
        double variance = Comparer.variance(values);
        double measuring = Measured.meanSquare(values);
        int freedom = values.size() - 1;
        ChiSquaredDistribution chi = new ChiSquaredDistribution(null, freedom);
        double low = variance * freedom / chi.inverseCumulativeProbability(0.84);
        double high = variance * freedom / chi.inverseCumulativeProbability(0.16);
        return new Scatter(
                id,
                label,
                unit,
                root(variance - measuring),
                root(low - measuring),
                root(high - measuring),
                step,
                values.stream().min(Comparator.comparing(Reading::value)).orElseThrow(),
                values.stream().max(Comparator.comparing(Reading::value)).orElseThrow());
    }

    private static double root(double x) {
        return Math.sqrt(Math.max(0, x));
    }
}
