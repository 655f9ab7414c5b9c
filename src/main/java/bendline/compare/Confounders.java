package bendline.compare;

import bendline.compare.Condition.Kind;
import bendline.compare.Confounder.State;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Looks for what else changed between two sets, and says which of it could explain a difference. */
final class Confounders {

    /** What matters so much that silence about it must be said. */
    private static final Set<Condition> WANTED =
            EnumSet.of(Condition.ROD, Condition.LINE, Condition.RIG_MASS, Condition.WIND);

    private static final Set<String> FLIGHT = Set.of(Cast.DISTANCE, "flightSeconds", "launchAngleAgainstBestDeg");

    private Confounders() {}

    /** Everything that differs, is mixed or isn't told though it matters; what differs first. */
    static List<Confounder> between(CastSet a, CastSet b) {
        List<Confounder> out = new ArrayList<>();
        for (Condition c : Condition.values()) {
            Set<String> inA = a.told(c);
            Set<String> inB = b.told(c);
            boolean told = a.toldByAll(c) && b.toldByAll(c);
            boolean differs = c == Condition.WIND ? !windsAlike(a, b) : !inA.equals(inB);
            if (!inA.isEmpty() && !inB.isEmpty() && differs) {
                out.add(new Confounder(c, List.copyOf(inA), List.copyOf(inB), State.DIFFERS));
            } else if (!told && WANTED.contains(c)) {
                out.add(new Confounder(c, List.copyOf(inA), List.copyOf(inB), State.NOT_TOLD));
            } else if (inA.size() > 1 && c != Condition.DAY && c != Condition.WIND) {
                out.add(new Confounder(c, List.copyOf(inA), List.copyOf(inB), State.MIXED));
            }
        }
        out.sort(java.util.Comparator.comparing(Confounder::state));
        return out;
    }

    /** Whether every two known winds of the two sets are alike. */
    static boolean windsAlike(CastSet a, CastSet b) {
        List<Wind> winds = new ArrayList<>();
        for (CastSet set : List.of(a, b)) {
            set.casts().stream().map(Cast::wind).filter(w -> w != null).forEach(winds::add);
        }
        return winds.stream().allMatch(w -> winds.stream().allMatch(w::like));
    }

    /** Those that could have made a difference in a measure, so that it can't be put down to the technique. */
    static List<Confounder> explaining(String measure, String unit, List<Confounder> all) {
        return all.stream()
                .filter(c -> c.state() == State.DIFFERS
                        && explains(c.what().kind(), measure, unit)
                        // A distance is compared as its equivalent in still air where the wind differs.
                        && !(c.what() == Condition.WIND && measure.equals(Cast.DISTANCE)))
                .toList();
    }

    private static boolean explains(Kind kind, String measure, String unit) {
        return switch (kind) {
            case KIT, PERSON, PROGRAM -> true;
            case WIND -> FLIGHT.contains(measure);
            case CAMERA -> !measure.equals(Cast.DISTANCE) && !unit.equals("s");
            case RATE -> !measure.equals(Cast.DISTANCE);
            case PLACE, DAY -> false;
        };
    }
}
