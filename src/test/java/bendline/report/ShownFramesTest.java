package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.ClipAnalysis;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.SlowMotion;
import bendline.image.VideoPlanes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The cast of formulas is pushed from 2.31 s to 2.68 s of its 4 s. */
class ShownFramesTest {

    private static final double TICK = 2e-5;

    @TempDir
    private Path temp;

    @ParameterizedTest
    @CsvSource({"30, 1", "60, 1", "60.5, 1", "100, 3", "119.88, 4", "120, 4", "240, 8"})
    void allFramesAreShownAboutThePushAndThirtyASecondElsewhere(double rate, int every) {
        ClipInfo info = info(4, rate);
        ShownFrames shown = new ShownFrames(RetimedCast.on(Path.of("any.mp4"), info));
        for (int i = 0; i < info.frames(); i++) {
            double t = info.times().get(i);
            boolean pushed = t > 2.31 - 0.24 && t < 2.68 + 0.24;
            boolean far = t < 2.31 - 0.26 || t > 2.68 + 0.26;
            if (pushed || i == info.frames() - 1) {
                assertThat(shown.hold(i)).as("frame %d at %.3f s", i, t).isTrue();
            } else if (far) {
                assertThat(shown.hold(i)).as("frame %d at %.3f s", i, t).isEqualTo(i % every == 0);
            }
        }
    }

    @Test
    void aSlowedClipIsShownFrameByFrame() {
        ClipInfo slowed = info(16, 30).with(new SlowMotion(8, "told"));
        ShownFrames shown = new ShownFrames(RetimedCast.on(Path.of("any.mp4"), slowed));
        assertThat(IntStream.range(0, slowed.frames()).allMatch(shown::hold)).isTrue();
    }

    @Test
    void aClipShorterThanTheCastIsDrawnOnToo() {
        ClipInfo info = info(1.5, 60);
        ClipAnalysis analysis = RetimedCast.on(Path.of("any.mp4"), info);
        assertThat(analysis.casts().get(0).stroke().lastFrame()).isBetween(75, 89);
    }

    @Test
    void theFileHoldsTheFramesShownAtTheirTimesSlowedAboutThePush() throws IOException {
        ClipInfo info = info(4, 120);
        ClipAnalysis analysis = RetimedCast.on(Path.of("any.mp4"), info);
        ReportOptions plain = ReportOptions.PLAIN;
        ReportOptions slower =
                new ReportOptions(plain.veiled(), plain.reader(), false, new MarkedOptions(4, true), null, null);
        Path file = temp.resolve("marked.mp4");
        List<Double> times = new ArrayList<>();
        VideoPlanes black = VideoPlanes.black(info.width(), info.height());
        try (MarkedClip marked = new MarkedClip(analysis, file, slower)) {
            for (int i = 0; i < info.frames(); i++) {
                if (marked.wants(i)) {
                    double t = info.times().get(i);
                    marked.add(i, t, black);
                    // Slowed from 0.15 s before the push until 0.15 s after the rod is straight.
                    times.add(t + 3 * Math.max(0, Math.min(t, 2.83) - 2.16));
                }
            }
        }
        ClipInfo written = Footage.open(file).survey(f -> {});
        assertThat(written.frames()).isEqualTo(times.size()).isLessThan(info.frames() / 2 + 60);
        for (int i = 0; i < times.size(); i++) {
            assertThat(written.times().get(i))
                    .as("picture %d", i)
                    .isCloseTo(times.get(i), org.assertj.core.data.Offset.offset(TICK));
        }
    }

    private static ClipInfo info(double seconds, double rate) {
        int frames = (int) Math.round(seconds * rate);
        return new ClipInfo(
                160,
                90,
                frames,
                frames / rate,
                0,
                false,
                new SlowMotion(1, "no sign of slow motion in the file"),
                IntStream.range(0, frames).mapToObj(i -> i / rate).toList(),
                List.of());
    }
}
