package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import bendline.footage.Footage;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The yardstick must be a fair one: on an easy clip the general trackers follow. */
class BaselinesTest {

    private static final int FRAMES = 25;

    @TempDir
    static Path folder;

    private static Map<String, PointScore> easy;

    @BeforeAll
    static void followASlowDot() throws IOException {
        Path file = folder.resolve("dot.mp4");
        List<TruthFrame> truth = new ArrayList<>();
        BufferedImage ground = ground();
        try (ClipWriter writer = new ClipWriter(file, 320, 240, ClipWriterSettings.of(25, 4_000_000))) {
            for (int i = 0; i < FRAMES; i++) {
                Point tip = new Point(100.5 + 2 * i, 120.5 + i);
                writer.write(with(ground, tip), i / 25.0);
                truth.add(frame(i / 25.0, tip));
            }
        }
        easy = Baselines.run(Footage.open(file), new TruthClip("dot", 320, 240, truth, List.of()), beside(truth));
    }

    /** A trace that is a tenth of a pixel off, and says nothing in the second half. */
    private static Trace beside(List<TruthFrame> truth) {
        Tracked none = Tracked.notSeen(null, "not followed");
        List<FrameTrace> frames = IntStream.range(0, FRAMES)
                .mapToObj(i -> {
                    Tracked tip = Tracked.seen(truth.get(i).tip().plus(new Point(0.1, 0)), 1);
                    return new FrameTrace(i, i / 25.0, none, 2 * i < FRAMES ? tip : none, none, null, Double.NaN);
                })
                .toList();
        List<Homography> still = frames.stream().map(f -> Homography.IDENTITY).toList();
        return new Trace(320, 240, frames, new CameraMotion(still, 0, true), 100, 1, null);
    }

    private static BufferedImage ground() {
        BufferedImage image = new BufferedImage(320, 240, BufferedImage.TYPE_3BYTE_BGR);
        Random random = new Random(7);
        for (int y = 0; y < 240; y++) {
            for (int x = 0; x < 320; x++) {
                int v = 120 + random.nextInt(8);
                image.setRGB(x, y, v << 16 | v << 8 | v);
            }
        }
        return image;
    }

    private static BufferedImage with(BufferedImage ground, Point dot) {
        BufferedImage image = new BufferedImage(320, 240, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        g.drawImage(ground, 0, 0, null);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(Color.YELLOW);
        g.fill(new Ellipse2D.Double(dot.x() - 8, dot.y() - 8, 16, 16));
        g.setColor(Color.BLUE);
        g.fill(new Ellipse2D.Double(dot.x() - 4, dot.y() - 4, 8, 8));
        g.dispose();
        return image;
    }

    private static TruthFrame frame(double seconds, Point tip) {
        Polyline rod = new Polyline(List.of(new Point(0, 0), tip));
        return new TruthFrame(seconds, tip, true, null, false, true, rod.first(), rod, rod, 0, 1, Homography.IDENTITY);
    }

    @Test
    void eachFollowsASlowDotWithinAPixelOrTwo() {
        assertThat(easy.keySet()).containsExactly("CSRT", "KCF", "LK");
        easy.forEach((name, score) -> {
            assertThat(score.errors().count()).as(name).isEqualTo(FRAMES - 1);
            assertThat(score.errors().p95()).as(name).isLessThan(4);
            assertThat(score.lostOrWrong().hits()).as(name).isZero();
            assertThat(score.both().theirs().count()).as(name).isEqualTo(FRAMES / 2);
            assertThat(score.both().ours().count()).as(name).isEqualTo(FRAMES / 2);
            assertThat(score.both().ours().p95()).as(name).isCloseTo(0.1, within(1e-9));
        });
    }

    @Test
    void aTrackerThatSaysItIsLostCountsAsLost() {
        PointScore score = PointScore.NONE
                .plus(new Point(0, 0), true, null, new Point(1, 0))
                .plus(new Point(0, 0), true, new Point(3, 4), new Point(2, 0))
                .plus(new Point(0, 0), true, new Point(30, 40), null)
                .plus(new Point(0, 0), false, new Point(1, 1), new Point(1, 1));
        assertThat(score.errors().count()).isEqualTo(2);
        assertThat(score.seen()).isEqualTo(new Tally(2, 3));
        assertThat(score.lostOrWrong()).isEqualTo(new Tally(2, 3));
        assertThat(score.both().theirs().values()).containsExactly(5);
        assertThat(score.both().ours().values()).containsExactly(2);
    }
}
