package bendline.scene;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import bendline.footage.Footage;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A clip in which a square moves over speckled ground. */
class SceneTest {

    private static final int WIDTH = 160;
    private static final int HEIGHT = 120;

    @TempDir
    private Path folder;

    private Path clip(int frames) throws IOException {
        Path file = folder.resolve(frames + ".mp4");
        try (ClipWriter writer = new ClipWriter(file, WIDTH, HEIGHT, ClipWriterSettings.of(30, 400_000))) {
            for (int t = 0; t < frames; t++) {
                writer.write(picture(t), t / 30.0);
            }
        }
        return file;
    }

    private static BufferedImage picture(int t) {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        Random random = new Random(3);
        for (int k = 0; k < 300; k++) {
            int level = 60 + random.nextInt(140);
            g.setColor(new Color(level, level, level));
            g.fillRect(8 * (k % 20), 8 * (k / 20), 8, 8);
        }
        g.setColor(Color.BLACK);
        g.fillRect(t % (WIDTH - 20), 50, 12, 12);
        g.dispose();
        return image;
    }

    private static List<Integer> glimpsed(Scene scene) {
        return scene.glimpses().stream().map(Glimpse::frame).toList();
    }

    @Test
    void glimpsesAreSpreadOverTheClip() throws IOException {
        Footage footage = Footage.open(clip(300));
        List<Integer> frames = glimpsed(Scene.survey(footage, f -> {}));
        assertThat(frames).isSorted().doesNotHaveDuplicates().hasSizeBetween(40, 60);
        assertThat(frames.get(0)).isLessThan(8);
        assertThat(frames.get(frames.size() - 1)).isGreaterThan(291);
    }

    @Test
    void whatTheClipIsIsKnownWithoutReadingItAgain() throws IOException {
        Path file = clip(60);
        Footage footage = Footage.open(file);
        assertThat(glimpsed(Scene.survey(footage, f -> {}))).hasSize(60);
        Files.delete(file);
        assertThat(footage.survey(f -> {}).frames()).isEqualTo(60);
    }

    @Test
    void aClipThatEndsEarlyIsReadAgainForEnoughGlimpses() throws IOException {
        Path whole = clip(1200);
        byte[] bytes = Files.readAllBytes(whole);
        Path torn = Files.write(folder.resolve("torn.mp4"), Arrays.copyOf(bytes, bytes.length / 5));
        Footage footage = Footage.open(torn);
        assertThat(footage.expectedFrames()).isEqualTo(1200);
        List<Integer> frames = glimpsed(Scene.survey(footage, f -> {}));
        int there = footage.survey(f -> {}).frames();
        assertThat(there).isBetween(100, 400);
        assertThat(frames).hasSizeBetween(30, 119);
        assertThat(frames.get(frames.size() - 1)).isGreaterThan((int) (0.9 * there));
    }

    @Test
    void aFewFramesMakeNoScene() throws IOException {
        assertThat(Scene.survey(Footage.open(clip(5)), f -> {})).isNull();
    }
}
