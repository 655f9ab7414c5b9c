package bendline.technique;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.stroke.RenderedTruth;
import bendline.stroke.Stroke;
import bendline.stroke.StrokeTimer;
import bendline.technique.Finding.State;
import org.junit.jupiter.api.Test;

/** The two main faults on casts rendered by another simulator: no false alarm, no miss. */
class RenderedFindingsTest {

    @Test
    void theMainFaultsAreFoundWhereTheyAreAndNowhereElse() {
        for (RenderedTruth truth : RenderedTruth.all()) {
            for (Stroke s : new StrokeTimer().time(truth.trace(0.7, 0.03, 2), Setup.NONE, new SlowMotion(1, "given"))) {
                Review r = new TechniqueReview().review(s);
                check(truth, r, "flat-rushed-backswing", truth.fault("rushed_flat_backswing"));
                check(truth, r, "tip-dropped-early", truth.fault("tip_drop"));
            }
        }
    }

    private static void check(RenderedTruth truth, Review r, String id, String degree) {
        Finding f =
                r.findings().stream().filter(x -> x.id().equals(id)).findFirst().orElseThrow();
        if (degree.equals("none")) {
            assertThat(f.state()).as(truth.name() + " " + f.says()).isEqualTo(State.CLEAR);
        } else if (!degree.equals("borderline")) {
            assertThat(f.state()).as(truth.name() + " " + f.says()).isEqualTo(State.FOUND);
        }
    }
}
