package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.Analyser;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup;
import bendline.trace.FrameTrace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Scenes made by somebody else: a bar that swings by a known formula, filmed awkwardly, and a picture without any rod. */
@Execution(ExecutionMode.CONCURRENT)
class AwkwardScenesTest {

    private static ClipAnalysis analysed(String name) {
        return new Analyser().analyse(SharedFolder.need("awkward/made/" + name), Setup.NONE, Progress.SILENT);
    }

    /** The scenes' own formula. */
    private static double barDeg(double seconds) {
        return 90 + 45 * Math.sin(2 * Math.PI * seconds / 1.5);
    }

    @ParameterizedTest
    @CsvSource({
        // name, seconds from a frame's stamp to the middle of its exposure, most degrees rms, least share of the frames
        "moov_at_end.mp4, 0, 1, 0.95",
        "scene_camera_shake.mp4, 0, 2, 0.95",
        "scene_exposure_steps.mp4, 0, 2, 0.95",
        "scene_motion_blur.mp4, 0.0145833, 3, 0.8",
        "sar_squeezed.mp4, 0, 1, 0.95",
        "hevc10_hlg.mov, 0, 1, 0.95",
        "vfr_phone.mp4, 0, 1, 0.95",
        "rot90_portrait.mp4, 0, 1, 0.95",
        "rot180_upside_down.mp4, 0, 1, 0.95"
    })
    void theBarIsFollowed(String name, double middle, double mostDeg, double leastShare) {
        ClipAnalysis told = analysed(name);
        double squares = 0;
        int found = 0;
        for (int i = 0; i < told.trace().frames().size(); i++) {
            FrameTrace f = told.trace().inPicture(i);
            Polyline blank = f.blank();
            if (blank != null) {
                Point d = blank.last().minus(blank.first());
                double off = Math.toDegrees(Math.atan2(-d.y(), d.x())) - barDeg(f.seconds() + middle);
                squares += off * off;
                found++;
            }
        }
        assertThat((double) found / told.trace().frames().size()).isGreaterThan(leastShare);
        assertThat(Math.sqrt(squares / found)).isLessThan(mostDeg);
        assertThat(told.casts()).as("a bar that swings evenly is no cast").isEmpty();
    }

    @Test
    void aTestPatternHoldsNoCast() {
        assertThat(analysed("scene_busy_testsrc2.mp4").casts()).isEmpty();
    }
}
