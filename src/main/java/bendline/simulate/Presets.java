package bendline.simulate;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Named scenarios to start from. */
public final class Presets {

    private static final double START = 0.8;

    private Presets() {}

    /** The names that {@link #named} knows, in order of the alphabet. */
    public static List<String> names() {
        return List.copyOf(casts().keySet());
    }

    /**
     * A preset by name.
     *
     * @throws IllegalArgumentException where there is none of that name; the message lists the names
     */
    public static Scenario named(String name) {
        List<CastScript> casts = casts().get(name);
        if (casts == null) {
            throw new IllegalArgumentException("there is no preset \"" + name + "\"; there are " + names());
        }
        return CastTuner.tunedAndTrimmed(new Scenario(
                name,
                20_000 + Math.abs(name.hashCode() % 1000),
                60,
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

    private static Map<String, List<CastScript>> casts() {
        Map<String, List<CastScript>> all = new TreeMap<>();
        all.put("good", List.of(CastScript.of(START, 0, 0)));
        all.put("rushed", List.of(CastScript.of(START, 1, 0)));
        all.put("early-drop", List.of(CastScript.of(START, 0, 1)));
        all.put("both", List.of(CastScript.of(START, 1, 1)));
        all.put("mild", List.of(CastScript.of(START, 0.55, 0.55)));
        all.put("put-down", List.of(CastScript.of(START, 0, 0).puttingDown()));
        all.put("nobody", List.of());
        CastScript first = CastScript.of(START, 0, 0);
        double then = first.overSeconds() + Scenario.BETWEEN_CASTS + 0.5;
        all.put("twice", List.of(first, CastScript.of(then, 1, 1)));
        return all;
    }
}
