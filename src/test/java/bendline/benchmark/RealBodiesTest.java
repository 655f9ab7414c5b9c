package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Body pose on filmed people, against joints labelled by hand in 36 frames before any program had looked at them.
 *
 * <p>The published order of peaks, shoulder before elbow before wrist (Allen et al. 2008, Sports Biomechanics 7:38-53), is not asked of
 * the filmed throw: over five frames its shoulder is fastest in frame 64, elbow and wrist in 66, but at 30 frames a second that is two
 * pictures, and there the two arms are mistaken for each other. BodyCastsTest asks it of simulated casts.
 */
class RealBodiesTest {

    /**
     * Half of the joints within 5 % of the person's height. What others reach with several cameras is 1 to 3 % (30 to 50 mm for
     * hips and knees, Needham et al. 2021, Sci. Rep. 11:20673; most under 30 mm, Nakano et al. 2020, Front. Sports Act. Living
     * 2:50); a label read by eye is itself good to 2 or 3 %.
     */
    private static final double ASKED = 0.05;

    @ParameterizedTest
    @CsvSource({
        "club-swing.mp4, club-swing, 4",
        "throw-no-rod.avi, throw-no-rod, 1",
        "rod-bent-portrait.mp4, rod-bent-portrait, 8"
    })
    void halfOfTheJointsLieWithinAFewHundredthsOfTheHeight(String clip, String labels, int step) throws IOException {
        Path file = SharedFolder.need("clips/" + clip);
        BodyLook.Score score = BodyLook.score(file, BodyLabels.read(labels), step);
        assertThat(score.found()).isEqualTo(score.asked());
        assertThat(score.quantile(0.5)).isLessThan(ASKED);
    }
}
