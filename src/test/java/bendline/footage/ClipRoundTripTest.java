package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the writer writes, the reader reads: count, times, turn and grey values. */
class ClipRoundTripTest {

    private static final int FRAMES = 45;

    @TempDir
    Path folder;

    @Test
    void everyFrameComesBackAtItsOwnTime() throws IOException {
        Path clip = folder.resolve("uneven.mp4");
        List<Double> times = new ArrayList<>();
        try (ClipWriter writer = new ClipWriter(clip, 320, 240, ClipWriterSettings.of(30, 2_000_000))) {
            for (int i = 0; i < FRAMES; i++) {
                double seconds = i / 30.0 + (i % 3) * 0.004;
                times.add(seconds);
                writer.write(picture(i, 320, 240), seconds);
            }
        }
        ClipInfo info = Footage.open(clip).survey(done -> {});
        assertThat(info.frames()).isEqualTo(FRAMES);
        for (int i = 0; i < FRAMES; i++) {
            assertThat(info.times().get(i)).isCloseTo(times.get(i), within(1e-4));
        }
        assertThat(info.notes()).singleElement().asString().contains("uneven steps");
    }

    @Test
    void aQuarterTurnTagBringsTheWhiteCornerBack() throws IOException {
        for (int degrees = 0; degrees < 360; degrees += 90) {
            Path clip = folder.resolve("turn" + degrees + ".mp4");
            try (ClipWriter writer =
                    new ClipWriter(clip, 320, 240, new ClipWriterSettings(30, 2_000_000, degrees, 0, 15))) {
                for (int i = 0; i < 5; i++) {
                    writer.write(picture(i, 320, 240), i / 30.0);
                }
            }
            try (LumaReader reader = Footage.open(clip).lumas()) {
                Frame frame = reader.next();
                int w = frame.luma().width();
                int h = frame.luma().height();
                assertThat(w).isEqualTo(degrees % 180 == 0 ? 320 : 240);
                // The stored white square is top left; a clockwise turn takes it round the corners.
                int x = degrees == 90 || degrees == 180 ? w - 12 : 12;
                int y = degrees == 180 || degrees == 270 ? h - 12 : 12;
                assertThat(frame.luma().at(x, y)).as("%d degrees", degrees).isGreaterThan(225);
                assertThat(frame.luma().at(w - x, h - y)).isLessThan(170);
            }
        }
    }

    private static BufferedImage picture(int index, int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        g.setColor(new Color(120, 150, 180));
        g.fillRect(0, 0, width, height);
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, 24, 24);
        g.setColor(Color.BLACK);
        g.fillRect(40 + 4 * index, 60, 8, 120);
        g.dispose();
        return image;
    }
}
