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

    /**
     * Steps taken one after the other.
     *
     * @param steps in that order
     * @param metres what they are worth together
     */
    public record Together(List<Gain> steps, Answer metres) {}

    /** The first steps, the weather left out, that together are worth so many metres; all of them where they are worth less. */
    static Together towards(DoubtfulShot shot, List<Gain> ranked, double metres) {
        List<Gain> open = ranked.stream()
                .filter(g -> g.change().kind() != Change.Kind.WEATHER)
                .filter(g -> g.metres().value() != null && g.metres().value() > 0)
                .toList();
        Together out = new Together(List.of(), Answer.unknown("m", "no step is worth anything"));
        for (int n = 1; n <= open.size(); n++) {
            out = new Together(open.subList(0, n), together(shot, open.subList(0, n)));
            Double worth = out.metres().value();
            if (worth != null && worth >= metres) {
                break;
            }
        }
        return out;
    }

    private static Answer together(DoubtfulShot shot, List<Gain> steps) {
        double[][] draws = Draws.normal(DRAWS);
        double[] gained = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            Shot before = shot.drawn(draws[i]);
            before = before.with(before.tackle().clippedAt(Double.POSITIVE_INFINITY));
            Shot after = before;
            for (Gain g : steps) {
                after = g.change().step().take(after, draws[i][Draws.OWN], draws[i][Draws.OWN + 1]);
            }
            gained[i] = FLYER.fly(after).distanceM() - FLYER.fly(before).distanceM();
        }
        return Answer.of(gained, "m", "the steps taken together");
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
