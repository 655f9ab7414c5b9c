package bendline.compare;

import bendline.compare.Cast.Turn;
import bendline.stroke.Measure;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Sets of casts made of numbers. */
final class Sets {

    static final Wind CALM = new Wind(0.5, 0);

    private Sets() {}

    static Map<Condition, String> conditions(String... pairs) {
        Map<Condition, String> out = new EnumMap<>(Condition.class);
        out.put(Condition.ROD, "Heron 390");
        out.put(Condition.LINE, "0.10 braid");
        out.put(Condition.RIG_MASS, "85 g");
        out.put(Condition.WIND, "0.5 m/s");
        for (int i = 0; i < pairs.length; i += 2) {
            out.put(Condition.valueOf(pairs[i]), pairs[i + 1]);
        }
        return out;
    }

    static Measure measure(String id, String unit, double value, double plusMinus) {
        return new Measure(id, id, unit, value, plusMinus, "made up");
    }

    static Cast cast(String name, @Nullable Turn turn, Measure... measures) {
        return new Cast(name, turn, conditions(), CALM, Cast.noDistance(), List.of(measures));
    }

    /** One measure {@code tempo}, casts one after the other in a session of the set's name. */
    static CastSet tempo(String label, double... values) {
        List<Cast> casts = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            casts.add(cast(label + i, new Turn(label, i + 1), measure("tempo", "1", values[i], 0.01)));
        }
        return new CastSet(label, casts);
    }

    static Comparer comparer(String... family) {
        return new Comparer(List.of(family), Comparer.Pairing.WHERE_THEY_ALTERNATE, StillAir.FLOWN);
    }
}
