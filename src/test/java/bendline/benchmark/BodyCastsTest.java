package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.simulate.BodyScript;
import bendline.simulate.CastFilm;
import bendline.simulate.CastScript;
import bendline.simulate.RigSpec;
import bendline.simulate.RodSpec;
import bendline.simulate.Severity;
import bendline.simulate.Truth;
import bendline.stroke.BodyReader;
import bendline.stroke.Stroke;
import bendline.stroke.StrokeTimer;
import bendline.technique.Finding;
import bendline.technique.Finding.State;
import bendline.technique.TechniqueReview;
import bendline.trace.Trace;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Casts of a simulated body that has its own timing, read from joints and traces with the errors that were measured: the three
 * findings of the body where they were scripted, and nowhere else.
 */
class BodyCastsTest {

    /** So long after the rod this rig comes to its turning point behind; the push starts then. */
    private static final double RIG_ARRIVED_SECONDS = 0.9;

    private static final Map<String, CastFilm> FILMS = new ConcurrentHashMap<>();

    @BeforeAll
    static void cast() {
        Stream.of("sound", "low-hands", "weak-pull", "body-last", "turned-first")
                .parallel()
                .forEach(kind -> FILMS.put(
                        kind,
                        CastFilm.asWritten(GridDeck.scenario(
                                kind, 5, 1.78, RodSpec.medium(), RigSpec.feeder(85, 1.25), script(kind)))));
    }

    private static CastScript script(String kind) {
        CastScript c = CastScript.of(0.3, 0, 0);
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
            default -> BodyScript.turnedFirst(plain);
        };
    }

    private static Truth truth(String kind, double fps) {
        return FILMS.get(kind).seenBy(GridDeck.camera(fps, 3));
    }

    /** The cast as read from a trace and joints with errors. */
    private static Stroke read(Truth truth, BodyNoise errors, long seed) {
        TraceNoise noise = TraceNoise.measured().stream()
                .filter(n -> n.clip().startsWith("good-once-more"))
                .findFirst()
                .orElseThrow();
        Trace trace = NoisyFilm.of(SimulatedTruth.of(truth), noise, 1, 0.3, seed);
        Setup setup = new Setup(3.9, RodSpec.medium().freeLengthM(), 1.25, 0.085, null, null, List.of());
        SlowMotion real = new SlowMotion(1, "given");
        List<Stroke> strokes = new StrokeTimer().time(trace, setup, real);
        assertThat(strokes).hasSize(1);
        return new BodyReader(trace, setup, real).read(strokes.get(0), errors.of(truth, seed));
    }

    private static Finding finding(Stroke s, String id) {
        return new TechniqueReview()
                .review(s).findings().stream()
                        .filter(f -> f.id().equals(id))
                        .findFirst()
                        .orElseThrow();
    }

    private static double value(Stroke s, String id) {
        assertThat(s.measure(id).value()).as(id + ": " + s.measure(id).basis()).isNotNull();
        return s.measure(id).value();
    }

    @ParameterizedTest
    @CsvSource({
        "sound, CLEAR, CLEAR, CLEAR",
        "low-hands, FOUND, CLEAR, CLEAR",
        "weak-pull, CLEAR, FOUND, CANNOT_TELL",
        "body-last, CLEAR, CLEAR, FOUND",
        "turned-first, CLEAR, CLEAR, FOUND"
    })
    void whatWasScriptedIsFoundAndNothingElse(String kind, State low, State weak, State order) {
        Truth truth = truth(kind, 120);
        for (long seed = 1; seed <= 3; seed++) {
            Stroke s = read(truth, BodyNoise.MEASURED, seed);
            verdict(kind, s, "low-hands", low);
            verdict(kind, s, "weak-pull", weak);
            verdict(kind, s, "out-of-order", order);
        }
    }

    /** Temporary look. */
    @Test
    void look() {
        for (String kind : List.of("sound", "low-hands", "weak-pull", "body-last", "turned-first")) {
            for (double fps : new double[] {120, 60, 240, 30}) {
                Truth truth = truth(kind, fps);
                System.out.println("== " + kind + " " + fps + " "
                        + new java.util.TreeMap<>(truth.casts().get(0).measures()));
                System.out.println("   e " + truth.casts().get(0).events());
                for (long seed = 0; seed <= 4; seed++) {
                    Stroke s = read(truth, seed == 0 ? new BodyNoise(0, 0, 1, 1e-5) : BodyNoise.MEASURED, seed);
                    StringBuilder b = new StringBuilder("   ");
                    for (String id : List.of("low-hands", "weak-pull", "out-of-order")) {
                        b.append(id).append(' ').append(finding(s, id).state()).append("; ");
                    }
                    for (String id : List.of(
                            "upperHandAgainstHead",
                            "upperHandAgainstShoulder",
                            "lowerHandPullSpeed",
                            "lowerHandPullLength",
                            "hipsBeforeUpperHand",
                            "shouldersBeforeUpperHand",
                            "upperHandBeforeButt",
                            "lowerHandPullAfterPush")) {
                        var m = s.measure(id);
                        b.append(String.format(
                                " %s %.3f±%.3f",
                                id.replaceAll("[a-z]", ""), m.value() == null ? Double.NaN : m.value(), m.plusMinus()));
                    }
                    System.out.println(b);
                }
            }
        }
    }

    private static void verdict(String kind, Stroke s, String id, State wanted) {
        Finding f = finding(s, id);
        assertThat(f.state()).as(kind + ", " + f.says()).isEqualTo(wanted);
    }
}
