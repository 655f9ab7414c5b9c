package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Footage filmed by others, against what a person sees in it. It is not ours to pass on; see {@link SharedFolder}. */
class RealClipsTest {

    static List<String> withoutCast() {
        return RealFootage.WITHOUT_CAST;
    }

    @ParameterizedTest
    @MethodSource("withoutCast")
    void noCastIsReportedWhereNoneIsMade(String name) {
        assertThat(RealFootage.casts(SharedFolder.need("clips/" + name))).isZero();
    }
}
