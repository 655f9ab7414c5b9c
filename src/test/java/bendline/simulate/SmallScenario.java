package bendline.simulate;

import java.util.List;

/** Short, small clips for tests. */
final class SmallScenario {

    private SmallScenario() {}

    /** A cast filmed at 640×360, 30 frames a second, no noise, open sky. */
    static Scenario cast(double rush, double drop) {
        return with(List.of(CastScript.of(0.4, rush, drop)), true, 0, 0, 640, 360)
                .lasting(5.5);
    }

    /** Nothing but the lake. */
    static Scenario nobody() {
        return with(List.of(), false, 0, 0, 320, 180).lasting(0.5);
    }

    /** A rod held ready, the picture stored turned, the hand shaking. */
    static Scenario ready(int rotation, double shake) {
        return with(List.of(), true, rotation, shake, 640, 360).lasting(0.5);
    }

    private static Scenario with(
            List<CastScript> casts, boolean angler, int rotation, double shake, int width, int height) {
        CameraSpec camera = new CameraSpec(
                width, height, rotation, 30, 30, 0.002, 0.8 * width, 10.5, 1.5, 0, 0.4, 2.6, 0, shake, 0, 0, 3_000_000);
        SceneSpec scene = SceneSpec.alone(SceneSpec.Bank.OPEN, SceneSpec.Light.OVERCAST, 0, 0, 0, false, 0);
        return new Scenario(
                "small",
                8,
                10,
                true,
                angler,
                1.8,
                Scenario.TipColour.PLAIN,
                RodSpec.medium(),
                RigSpec.feeder(85, 1.25),
                casts,
                camera,
                scene);
    }
}
