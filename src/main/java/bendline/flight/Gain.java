package bendline.flight;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a change is worth.
 *
 * @param change the step
 * @param metres more distance, drawn flight by drawn flight, so that what both have in common cancels
 */
public record Gain(Change change, Answer metres) {

    private static final int DRAWS = 64;
    private static final Flyer FLYER = Flyer.quick();

    /** Metres for a unit of effort. */
    public double perEffort() {
        Double m = metres.value();
        return m == null ? Double.NaN : m / change.effort().count();
    }

    /** All changes, that with the most metres for its effort first. */
    public static List<Gain> ranked(DoubtfulShot shot, List<Change> changes) {
        Shot free = shot.shot().with(shot.shot().tackle().clippedAt(Double.POSITIVE_INFINITY));
        DoubtfulShot unclipped = shot.with(free);
        double[][] draws = Draws.normal(DRAWS);
        Shot[] before = new Shot[DRAWS];
        double[] distances = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            before[i] = unclipped.drawn(draws[i]);
            distances[i] = FLYER.fly(before[i]).distanceM();
        }
        List<Gain> out = new ArrayList<>();
        for (Change c : changes) {
            double[] gained = new double[DRAWS];
            for (int i = 0; i < DRAWS; i++) {
                Shot after = c.step().take(before[i], draws[i][Draws.OWN], draws[i][Draws.OWN + 1]);
                gained[i] = FLYER.fly(after).distanceM() - distances[i];
            }
            out.add(new Gain(c, Answer.of(gained, "m", c.basis())));
        }
        out.sort(Comparator.comparingDouble(Gain::perEffort).reversed());
        return out;
    }
}
