package bendline.technique;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.scene.Setup.Side;
import bendline.stroke.AnalyticStroke;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.stroke.Strokes;
import bendline.technique.Finding.State;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Released too early or too late, against the best angle that the flight gives. */
class AimTest {

    private static final Stroke STROKE = Strokes.timed(AnalyticStroke.GOOD, 60, 1, Side.RIGHT);

    private static Finding find(String id, double against, double sd, double givenUp, double givenUpSd) {
        Stroke aimed = STROKE.with(
                        new Measure("launchAngleAgainstBestDeg", "launch angle", "deg", against, sd, "flown"))
                .with(new Measure("launchGivenUp", "given up", "1", givenUp, givenUpSd, "flown"));
        return new TechniqueReview()
                .review(aimed).findings().stream()
                        .filter(f -> f.id().equals(id))
                        .findFirst()
                        .orElseThrow();
    }

    /** Degrees above the best, their uncertainty, the share given up and its; then the verdicts. */
    @ParameterizedTest
    @CsvSource({
        "15, 2, 0.10, 0.02, FOUND, CLEAR",
        "-18, 2, 0.12, 0.03, CLEAR, FOUND",
        "1, 2, 0.001, 0.002, CLEAR, CLEAR",
        "-6, 1, 0.02, 0.005, CLEAR, CLEAR",
        "7, 3, 0.035, 0.02, CANNOT_TELL, CLEAR",
        "-10, 3, 0.04, 0.02, CLEAR, CANNOT_TELL",
        "9, 1, 0.01, 0.005, CLEAR, CLEAR"
    })
    void theVerdictNeedsBothTheAngleAndWhatItCosts(
            double against, double sd, double givenUp, double givenUpSd, State early, State late) {
        Finding e = find("released-early", against, sd, givenUp, givenUpSd);
        Finding l = find("released-late", against, sd, givenUp, givenUpSd);
        assertThat(e.state()).isEqualTo(early);
        assertThat(l.state()).isEqualTo(late);
        for (Finding f : java.util.List.of(e, l)) {
            assertThat(f.checks()).hasSize(2);
            assertThat(f.severity() > 0).isEqualTo(f.state() == State.FOUND);
            assertThat(f.evidenceFrames()).isNotEmpty();
            assertThat(f.drill().toLowerCase(Locale.ROOT)).contains("half-power");
        }
    }

    @ParameterizedTest
    @CsvSource({"released-early", "released-late"})
    void withoutTheFlightItCantTell(String id) {
        Finding f = new TechniqueReview()
                .review(STROKE).findings().stream()
                        .filter(x -> x.id().equals(id))
                        .findFirst()
                        .orElseThrow();
        assertThat(f.state()).isEqualTo(State.CANNOT_TELL);
        assertThat(f.says()).contains("needs the flight");
    }
}
