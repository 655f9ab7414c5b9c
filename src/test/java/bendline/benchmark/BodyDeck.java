package bendline.benchmark;

import bendline.simulate.BodyScript;
import bendline.simulate.CameraSpec;
import bendline.simulate.CastScript;
import bendline.simulate.RigSpec;
import bendline.simulate.RodSpec;
import bendline.simulate.Scenario;
import bendline.simulate.SceneSpec;
import bendline.simulate.Severity;
import java.util.List;

/** Short casts of a body with a timing of its own, one sound and one for each fault of the body. */
final class BodyDeck {

    /** The sound one first. */
    static final List<String> KINDS = List.of("sound", "low-hands", "weak-pull", "body-last", "turned-first");

    /** So long after the rod this rig comes to its turning point behind; the push starts then. */
    private static final double RIG_ARRIVED_SECONDS = 0.9;

    private BodyDeck() {}

    /** A cast of one of the kinds, seen by a tripod that sees the whole rod. */
    static Scenario scenario(String kind) {
        return GridDeck.scenario(kind, 5, 1.78, RodSpec.medium(), RigSpec.feeder(85, 1.25), script(kind));
    }

    /** The same for a clip to be rendered: 720p, 60 frames a second, until a little after the release. */
    static Scenario filmed(String kind) {
        Scenario s = scenario(kind);
        CameraSpec camera = new CameraSpec(
                1280, 720, 0, 60, 60, 0.0025, 1007, 11.8, 1.5, 0, 0.35, 2.75, 0, 0, 2.0, 0.02, 8_000_000);
        return new Scenario(
                s.name(),
                s.seed(),
                4.2,
                true,
                true,
                s.statureM(),
                s.tipColour(),
                s.rod(),
                s.rig(),
                s.casts(),
                camera,
                SceneSpec.plain());
    }

    private static CastScript script(String kind) {
        CastScript c = CastScript.of(0.4, 0, 0);
        CastScript plain = new CastScript(
                c.startSeconds(),
                c.readyAngleDeg(),
                c.layBackDeg(),
                1.2,
                RIG_ARRIVED_SECONDS,
                0,
                c.pushSeconds(),
                c.turnDelaySeconds(),
                c.turnSeconds(),
                c.stopAngleDeg(),
                c.releaseDirectionDeg(),
                0,
                0.4,
                0,
                c.dropDelaySeconds(),
                c.dropSeconds(),
                false,
                Severity.NONE,
                Severity.NONE,
                null);
        return switch (kind) {
            case "sound" -> BodyScript.sound(plain);
            case "low-hands" -> BodyScript.lowHands(plain, 1);
            case "weak-pull" -> BodyScript.weakPull(plain);
            case "body-last" -> BodyScript.bodyLast(plain);
            case "turned-first" -> BodyScript.turnedFirst(plain);
            default -> throw new IllegalArgumentException("no cast of the kind " + kind + "; there are " + KINDS);
        };
    }
}
