package bendline.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Named scenarios to start from. */
public final class Presets {

    private static final double START = 0.8;

    private Presets() {}

    /** The names that {@link #named} knows, in order of the alphabet. */
    public static List<String> names() {
        return List.copyOf(all().keySet());
    }

    /**
     * A preset by name.
     *
     * @throws IllegalArgumentException where there is none of that name; the message lists the names
     */
    public static Scenario named(String name) {
        Scenario found = all().get(name);
        if (found == null) {
            throw new IllegalArgumentException("there is no preset \"" + name + "\"; there are " + names());
        }
        return found;
    }

    private static Map<String, Scenario> all() {
        Map<String, Scenario> all = new TreeMap<>();
        put(all, "good", List.of(CastScript.of(START, 0, 0)));
        put(all, "rushed", List.of(CastScript.of(START, 1, 0)));
        put(all, "early-drop", List.of(CastScript.of(START, 0, 1)));
        put(all, "both", List.of(CastScript.of(START, 1, 1)));
        put(all, "mild", List.of(CastScript.of(START, 0.55, 0.55)));
        put(all, "put-down", List.of(CastScript.of(START, 0, 0).puttingDown()));
        put(all, "nobody", List.of());
        CastScript first = CastScript.of(START, 0, 0);
        List<CastScript> twice = new ArrayList<>();
        twice.add(first);
        twice.add(CastScript.of(first.overSeconds() + Scenario.BETWEEN_CASTS + 0.2, 1, 1));
        put(all, "twice", twice);
        return all;
    }

    private static void put(Map<String, Scenario> all, String name, List<CastScript> casts) {
        double seconds =
                casts.isEmpty() ? 4 : Math.ceil(casts.get(casts.size() - 1).overSeconds());
        all.put(
                name,
                new Scenario(
                        name,
                        20_000 + name.hashCode() % 1000,
                        seconds,
                        true,
                        !casts.isEmpty(),
                        1.78,
                        Scenario.TipColour.ORANGE,
                        RodSpec.medium(),
                        RigSpec.feeder(85, 1.25),
                        casts,
                        CameraSpec.tripod1080p60(),
                        SceneSpec.plain()));
    }
}
