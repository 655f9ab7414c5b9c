package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Footage filmed by others, against what a person sees in it. It is not ours to pass on; see {@link SharedFolder}. */
@Execution(ExecutionMode.CONCURRENT)
class RealClipsTest {

    static List<String> withoutCast() {
        return RealFootage.WITHOUT_CAST;
    }

    @ParameterizedTest
    @MethodSource("withoutCast")
    void noCastIsReportedWhereNoneIsMade(String name) {
        assertThat(RealFootage.casts(SharedFolder.need("clips/" + name))).isZero();
    }

    /**
     * Of the labelled frames of a stretch, on how many the drawn blank must lie on the real one. The benchmark has more stretches:
     * each takes minutes.
     */
    static List<Arguments> stretches() {
        return List.of(Arguments.of("rod-bent-portrait.mp4", 436, 10), Arguments.of("rod-bent-clutter.mp4", 602, 12));
    }

    @ParameterizedTest
    @MethodSource("stretches")
    void aRealBlankIsFollowedFromOneMark(String clip, int marked, int least) throws IOException {
        Path file = SharedFolder.need("clips/" + clip);
        RealFootage.Stretch stretch = RealFootage.STRETCHES.stream()
                .filter(s -> s.clip().equals(clip) && s.marked() == marked)
                .findFirst()
                .orElseThrow();
        LabelScore score = stretch.score(file.getParent());
        assertThat(score.onBlank(RealFootage.ON_THE_BLANK_PX).hits())
                .as(score.toString())
                .isGreaterThanOrEqualTo(least);
    }
}
