package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HandLabelsTest {

    @ParameterizedTest
    @CsvSource({
        "rod-bent-portrait, 14, 14",
        "rod-two-boat-right, 10, 2",
        "rod-two-boat-left, 8, 4",
        "rod-bent-clutter, 13, 11",
        "rod-pan-pov, 14, 12"
    })
    void everyFrameHasFivePointsOfTheBlank(String name, int frames, int tips) throws IOException {
        HandLabels labels = HandLabels.read(name);
        assertThat(labels.frames()).hasSize(frames).allMatch(l -> l.blank().size() == 5);
        assertThat(labels.frames()).filteredOn(l -> l.tip() != null).hasSize(tips);
    }

    @Test
    void pointsGoFromGripToTipWithoutTurningBack() throws IOException {
        for (HandLabels.Label l : HandLabels.read("rod-bent-portrait").frames()) {
            List<Point> chain = new ArrayList<>(List.of(l.grip()));
            chain.addAll(l.blank());
            chain.add(l.tip());
            Polyline line = new Polyline(chain);
            assertThat(line.length()).as("frame " + l.frame()).isBetween(130.0, 310.0);
            for (int i = 1; i < chain.size(); i++) {
                assertThat(chain.get(i).distance(l.grip()))
                        .as("frame " + l.frame())
                        .isGreaterThan(chain.get(i - 1).distance(l.grip()));
            }
        }
    }

    @Test
    void aTraceThreePixelsBesideIsThreePixelsOff() throws IOException {
        HandLabels labels = HandLabels.read("rod-bent-portrait").between(396, 400);
        List<FrameTrace> frames = new ArrayList<>();
        for (int i = 0; i <= 400; i++) {
            Tracked none = Tracked.notSeen(null, "made up");
            frames.add(new FrameTrace(i, i / 30.0, none, none, none, null, Double.NaN));
        }
        HandLabels.Label l = labels.at(400);
        Polyline level = new Polyline(List.of(new Point(0, 203), new Point(320, 203)));
        Tracked tip = Tracked.seen(l.tip().plus(new Point(3, 4)), 1);
        frames.set(400, new FrameTrace(400, 400 / 30.0, Tracked.seen(l.grip(), 1), tip, tip, level, 0.01));
        Trace trace = new Trace(
                320,
                568,
                frames,
                new CameraMotion(Collections.nCopies(401, Homography.IDENTITY), 0, true),
                270,
                1,
                null);
        LabelScore score = LabelScore.of(trace, labels);
        double expected =
                l.blank().stream().mapToDouble(p -> Math.abs(p.y() - 203)).sum() / 5;
        assertThat(score.frames().get(1).blankDistance()).isEqualTo(expected, within(1e-9));
        assertThat(score.frames().get(1).tipError()).isEqualTo(5, within(1e-9));
        assertThat(score.onBlank(20)).isEqualTo(new Tally(1, 2));
    }

    @Test
    void aFrameWithoutLabelIsNamed() {
        assertThatThrownBy(() -> HandLabels.read("rod-bent-portrait").at(7)).hasMessageContaining("frame 7");
    }
}
