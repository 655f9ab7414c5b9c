package bendline.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Casts that belong together.
 *
 * @param label for people
 * @param casts in the order they were made, as far as that is known
 */
public record CastSet(String label, List<Cast> casts) {

    /** Copies the list. */
    public CastSet {
        casts = List.copyOf(casts);
    }

    /** What is known of a condition over the set, each answer once, in order. */
    Set<String> told(Condition condition) {
        Set<String> out = new TreeSet<>();
        for (Cast c : casts) {
            String value = c.conditions().get(condition);
            if (value != null) {
                out.add(value);
            }
        }
        return out;
    }

    /** Whether every cast tells of a condition. */
    boolean toldByAll(Condition condition) {
        return casts.stream().allMatch(c -> c.conditions().containsKey(condition));
    }

    /** Ids of the measures that at least so many casts know, in their order. */
    List<String> known(int casts) {
        List<String> out = new ArrayList<>();
        for (Cast c : this.casts) {
            c.measures().forEach(m -> {
                if (!out.contains(m.id())) {
                    out.add(m.id());
                }
            });
        }
        out.removeIf(id -> values(id).size() < casts);
        return out;
    }

    /** The casts in which a measure is known, with it. */
    List<Reading> values(String id) {
        List<Reading> out = new ArrayList<>();
        for (Cast c : casts) {
            (id.equals(Cast.DISTANCE) ? java.util.Optional.of(c.distance()) : c.measure(id))
                    .filter(m -> m.value() != null && Double.isFinite(m.value()))
                    .ifPresent(m -> out.add(new Reading(c, m.value(), m.plusMinus())));
        }
        return out;
    }
}
