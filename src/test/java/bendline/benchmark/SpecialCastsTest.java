package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.simulate.CastFilm;
import bendline.simulate.CastScript;
import bendline.simulate.RigSpec;
import bendline.simulate.RodSpec;
import bendline.simulate.Severity;
import bendline.stroke.Stroke;
import bendline.technique.Finding;
import bendline.technique.Finding.State;
import bendline.technique.TechniqueReview;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Casts that have one side of a fault and not the fault, or look harmless and have it: simulated, read from traces with the errors
 * that the tracker made on one clip.
 */
class SpecialCastsTest {

    /** So long after the rod this rig comes to its turning point behind; the push starts then. */
    private static final double RIG_ARRIVED_SECONDS = 0.9;

    /**
     * Columns: metres it flies at least (a clean cast of this kit 95), lay-back and stop in degrees, backswing in seconds, whether the
     * rod is dropped, verdicts.
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "slow but flat, 85, 167, 62, 2.45, false, CLEAR, CLEAR",
        "quick but well loaded, 85, 141, 62, 1.00, false, CLEAR, CLEAR",
        "low but held, 50, 141, 45, 2.45, false, CLEAR, CLEAR",
        "high but dropped, 50, 141, 74, 2.45, true, CLEAR, FOUND"
    })
    void comeOutRight(
            String name,
            double least,
            double layBack,
            double stop,
            double backswing,
            boolean dropped,
            State rushed,
            State drop) {
        CastFilm film = CastFilm.asWritten(GridDeck.scenario(
                "special",
                5,
                1.78,
                RodSpec.medium(),
                RigSpec.feeder(85, 1.25),
                script(layBack, stop, backswing, dropped)));
        assertThat(film.distance(0, 0)).as(name + ", metres").isGreaterThan(least);
        Stroke s = read(film);
        assertVerdict(name, s, "flat-rushed-backswing", rushed);
        assertVerdict(name, s, "tip-dropped-early", drop);
    }

    private static void assertVerdict(String name, Stroke s, String id, State wanted) {
        Finding f = new TechniqueReview()
                .review(s).findings().stream()
                        .filter(x -> x.id().equals(id))
                        .findFirst()
                        .orElseThrow();
        assertThat(f.state()).as(name + ": " + f.says()).isEqualTo(wanted);
    }

    private static Stroke read(CastFilm film) {
        TraceNoise noise = TraceNoise.measured().stream()
                .filter(n -> n.clip().startsWith("good-once-more"))
                .findFirst()
                .orElseThrow();
        Stroke s = StrokeBench.read(film, new StrokeBench.View(60, 3, 0.3), noise, 9)
                .stroke();
        assertThat(s).isNotNull();
        return s;
    }

    private static CastScript script(double layBack, double stop, double backswing, boolean dropped) {
        CastScript c = CastScript.of(0.8, 0, 0);
        CastScript d = CastScript.of(0.8, 0, dropped ? 1 : 0);
        return new CastScript(
                c.startSeconds(),
                c.readyAngleDeg(),
                layBack,
                backswing,
                RIG_ARRIVED_SECONDS,
                0,
                c.pushSeconds(),
                c.turnDelaySeconds(),
                c.turnSeconds(),
                stop,
                c.releaseDirectionDeg(),
                c.releaseLateSeconds(),
                c.holdSeconds(),
                d.dropDeg(),
                d.dropDelaySeconds(),
                d.dropSeconds(),
                false,
                Severity.NONE,
                Severity.NONE,
                null);
    }
}
