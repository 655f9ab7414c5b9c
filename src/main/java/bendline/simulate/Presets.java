package bendline.simulate;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Named scenarios to start from. */
public final class Presets {

    private static final double START = 0.8;

    /** Clips that go on until the rig is in the water, the rod held still. */
    private static final String CLIP = "clip-";

    /** Metres of line at which the clip stops a rig that would fly 93 m. */
    private static final Map<String, Double> CLIPPED_AT = Map.of("clip-firm", 75.0, "clip-soft", 75.0);

    /** Seconds that are filmed longer for it. */
    private static final double UNTIL_LANDED = 4.4;

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
        Scenario scenario = CastTuner.tunedAndTrimmed(new Scenario(
                name,
                20_000 + Math.abs(name.hashCode() % 1000),
                60,
                true,
                !casts.isEmpty(),
                1.78,
                Scenario.TipColour.ORANGE,
                RodSpec.medium(),
                RigSpec.feeder(85, 1.25)
                        .clippedAt(CLIPPED_AT.getOrDefault(name, 0.0), name.equals("clip-soft") ? 0.4 : 0),
                casts,
                CameraSpec.tripod1080p60(),
                SceneSpec.plain()));
        return name.startsWith(CLIP) ? scenario.lasting(scenario.seconds() + UNTIL_LANDED) : scenario;
    }

    private static Map<String, List<CastScript>> casts() {
        Map<String, List<CastScript>> all = new TreeMap<>();
        all.put("good", List.of(CastScript.of(START, 0, 0)));
        all.put("rushed", List.of(CastScript.of(START, 1, 0)));
        all.put("early-drop", List.of(CastScript.of(START, 0, 1)));
        all.put("both", List.of(CastScript.of(START, 1, 1)));
        all.put("mild", List.of(CastScript.of(START, 0.55, 0.55)));
        CastScript plain = CastScript.of(START, 0, 0);
        all.put("sound-body", List.of(BodyScript.sound(plain)));
        all.put("low-hands", List.of(BodyScript.lowHands(plain, 1)));
        all.put("weak-pull", List.of(BodyScript.weakPull(plain)));
        all.put("body-last", List.of(BodyScript.bodyLast(plain)));
        all.put("turned-first", List.of(BodyScript.turnedFirst(plain)));
        all.put("put-down", List.of(CastScript.of(START, 0, 0).puttingDown()));
        all.put("nobody", List.of());
        List<CastScript> held = List.of(CastScript.of(START, 0, 0).holding(5));
        List.of("firm", "soft", "none").forEach(how -> all.put(CLIP + how, held));
        CastScript first = CastScript.of(START, 0, 0);
        double then = first.overSeconds() + Scenario.BETWEEN_CASTS + 0.5;
        all.put("twice", List.of(first, CastScript.of(then, 1, 1)));
        return all;
    }
}
