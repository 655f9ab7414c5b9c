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
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Casts that have one side of a fault and not the fault, or look harmless and have it: simulated, read from traces with the errors
 * that the tracker made on one clip.
 */
class SpecialCastsTest {

    /** Errors of tracing are drawn so often. */
    private static final int SEEDS = 3;

    /** A line that hangs slack for more of the forward stroke than this was not waited for. */
    private static final double SLACK = 0.1;

    /**
     * Columns: metres it flies at least (a clean cast of this kit 95), lay-back and stop in degrees, backswing in seconds, how long the
     * rig of this cast comes to its turning point behind after the rod (the push starts then, and the line is tight), whether the rod
     * is dropped, verdicts.
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "slow but flat, 85, 167, 62, 2.45, 1.1, false, CLEAR, CLEAR",
        "quick but well loaded, 85, 141, 62, 1.00, 0.9, false, CLEAR, CLEAR",
        "low but held, 50, 141, 45, 2.45, 0.7, false, CLEAR, CLEAR",
        "high but dropped, 50, 141, 74, 2.45, 0.7, true, CLEAR, FOUND"
    })
    void comeOutRight(
            String name,
            double least,
            double layBack,
            double stop,
            double backswing,
            double arrived,
            boolean dropped,
            State rushed,
            State drop) {
        CastFilm film = CastFilm.asWritten(GridDeck.scenario(
                "special",
                5,
                1.78,
                RodSpec.medium(),
                RigSpec.feeder(85, 1.25),
                script(layBack, stop, backswing, arrived, dropped)));
        assertThat(film.distance(0, 0)).as(name + ", metres").isGreaterThan(least);
        assertThat(slack(film)).as(name + ", slack").isLessThan(SLACK);
        for (long seed = 1; seed <= SEEDS; seed++) {
            Stroke s = read(film, seed);
            assertVerdict(name, s, "flat-rushed-backswing", rushed);
            assertVerdict(name, s, "tip-dropped-early", drop);
        }
    }

    private static void assertVerdict(String name, Stroke s, String id, State wanted) {
        Finding f = new TechniqueReview()
                .review(s).findings().stream()
                        .filter(x -> x.id().equals(id))
                        .findFirst()
                        .orElseThrow();
        assertThat(f.state()).as(name + ": " + f.says()).isEqualTo(wanted);
    }

    private static double slack(CastFilm film) {
        Map<String, Double> truth =
                film.seenBy(GridDeck.camera(60, 3)).casts().get(0).measures();
        return truth.get("slackShareOfForward");
    }

    private static Stroke read(CastFilm film, long seed) {
        TraceNoise noise = TraceNoise.measured().stream()
                .filter(n -> n.clip().startsWith("good-once-more"))
                .findFirst()
                .orElseThrow();
        Stroke s = StrokeBench.read(film, new StrokeBench.View(60, 3, 0.3), noise, seed)
                .stroke();
        assertThat(s).isNotNull();
        return s;
    }

    private static CastScript script(double layBack, double stop, double backswing, double arrived, boolean dropped) {
        CastScript c = CastScript.of(0.8, 0, 0);
        CastScript d = CastScript.of(0.8, 0, dropped ? 1 : 0);
        return new CastScript(
                c.startSeconds(),
                c.readyAngleDeg(),
                layBack,
                backswing,
                arrived,
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
