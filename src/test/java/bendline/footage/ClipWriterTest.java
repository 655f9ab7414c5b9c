package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClipWriterTest {

    @TempDir
    Path folder;

    @Test
    void everyFrameComesBackInOrderAtItsOwnTime() throws IOException {
        double[] times = new double[100];
        for (int i = 0; i < times.length; i++) {
            times[i] = i / 30.0 + (i % 3) * 0.004 + (i > 50 ? 0.25 : 0);
        }
        Footage clip = Footage.open(BarClip.write(folder.resolve("uneven.mp4"), times));
        try (LumaReader reader = clip.lumas()) {
            for (int i = 0; i < times.length; i++) {
                Frame frame = reader.next();
                assertThat(frame.index()).isEqualTo(i);
                assertThat(BarClip.number(frame.luma())).isEqualTo(i);
                assertThat(frame.seconds()).isCloseTo(times[i], within(1.0 / 90_000));
            }
            assertThat(reader.next()).isNull();
        }
        assertThat(clip.survey(done -> {}).notes())
                .anyMatch(n -> n.startsWith("Frames are missing in 1 place; the longest hole is 0.275 s after 1.67 s"))
                .anyMatch(n -> n.contains("uneven steps"));
    }

    /** In haste two groups of pictures are encoded side by side; a player must not see where one ends. */
    @Test
    void groupsEncodedSideBySideJoinWithoutASeam() throws IOException {
        ClipWriterSettings haste = new ClipWriterSettings(30, 1_000_000, 0, 0, 15).inHaste();
        double[] times = BarClip.steady(100, 30);
        for (int i = 50; i < times.length; i++) {
            times[i] += 0.021;
        }
        Path file = BarClip.write(folder.resolve("joined.mp4"), times, haste);
        try (LumaReader reader = Footage.open(file).lumas()) {
            for (int i = 0; i < times.length; i++) {
                Frame frame = reader.next();
                assertThat(BarClip.number(frame.luma())).isEqualTo(i);
                assertThat(frame.seconds()).isCloseTo(times[i], within(1.0 / 90_000));
            }
            assertThat(reader.next()).isNull();
        }
    }

    @Test
    void aRodThinAsThreePixelsStaysSharp() throws IOException {
        Path file = folder.resolve("rod.mp4");
        int frames = 40;
        try (ClipWriter writer = new ClipWriter(file, 640, 360, ClipWriterSettings.of(60, 6_000_000))) {
            for (int i = 0; i < frames; i++) {
                writer.write(rod(i), i / 60.0);
            }
        }
        try (PictureReader reader = Footage.open(file).pictures()) {
            for (int i = 0; i < frames; i++) {
                // Common practice, no source: above 40 dB a still is hard to tell from its original.
                assertThat(greyPeakToNoise(rod(i), reader.next().image()))
                        .as("frame %d", i)
                        .isGreaterThan(40);
            }
        }
    }

    @Test
    void theRateIsKeptOnNoise() throws IOException {
        Path file = folder.resolve("noise.mp4");
        Random random = new Random(3);
        try (ClipWriter writer = new ClipWriter(file, 320, 240, ClipWriterSettings.of(30, 1_000_000))) {
            for (int i = 0; i < 150; i++) {
                BufferedImage image = BarClip.picture(i);
                byte[] pixels = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
                for (int p = 0; p < pixels.length; p++) {
                    pixels[p] = (byte) Math.max(0, Math.min(255, (pixels[p] & 255) + 5 * random.nextGaussian()));
                }
                writer.write(image, i / 30.0);
            }
        }
        assertThat(Files.size(file) * 8 / 5.0).isBetween(600_000.0, 1_200_000.0);
        assertThat(Footage.open(file).survey(done -> {}).frames()).isEqualTo(150);
    }

    @Test
    void theIndexComesFirstAndThereIsNoSound() throws IOException {
        Path file = BarClip.write(folder.resolve("clip.mp4"), BarClip.steady(10, 30));
        String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
        assertThat(bytes.indexOf("moov")).isPositive().isLessThan(bytes.indexOf("mdat"));
        assertThat(bytes).doesNotContain("soun");
    }

    @Test
    void theSameFramesGiveTheSameBytes() throws IOException {
        Path one = BarClip.write(folder.resolve("one.mp4"), BarClip.steady(40, 30));
        Path two = BarClip.write(folder.resolve("two.mp4"), BarClip.steady(40, 30));
        assertThat(Files.mismatch(one, two)).isEqualTo(-1);
        ClipWriterSettings haste = ClipWriterSettings.of(30, 2_000_000).inHaste();
        Path three = BarClip.write(folder.resolve("three.mp4"), BarClip.steady(70, 30), haste);
        Path four = BarClip.write(folder.resolve("four.mp4"), BarClip.steady(70, 30), haste);
        assertThat(Files.mismatch(three, four)).as("groups side by side").isEqualTo(-1);
        assertThat(Footage.open(three).survey(done -> {}).frames()).isEqualTo(70);
    }

    @Test
    void theCaptureRateIsTaggedAsPhonesDo() throws IOException {
        Path file = BarClip.write(
                folder.resolve("slow.mp4"), BarClip.steady(60, 30), new ClipWriterSettings(30, 2_000_000, 0, 240, 15));
        ClipInfo info = Footage.open(file).survey(done -> {});
        assertThat(info.slowMotion().factor()).isCloseTo(8, within(1e-3));
        assertThat(info.slowMotion().basis())
                .isEqualTo("capture rate tag 240.0 per second, stored at 30.00 per second");
        String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
        // The value is a big-endian 32-bit float (type 23 of the QuickTime metadata value types).
        assertThat(bytes).contains("com.android.capture.fps").contains("data\0\0\0\u0017\0\0\0\0\u0043\u0070\0\0");
    }

    @Test
    void misuseIsRefused() throws IOException {
        ClipWriterSettings settings = ClipWriterSettings.of(30, 1_000_000);
        assertThatThrownBy(() -> new ClipWriter(folder.resolve("odd.mp4"), 321, 240, settings))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("even");
        assertThatThrownBy(() -> new ClipWriter(folder.resolve("no/such/folder.mp4"), 320, 240, settings))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("folder.mp4");
        try (ClipWriter writer = new ClipWriter(folder.resolve("ok.mp4"), 320, 240, settings)) {
            writer.write(BarClip.picture(0), 0);
            assertThatThrownBy(() -> writer.write(BarClip.picture(1), 0))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("rise");
        }
    }

    private static BufferedImage rod(int i) {
        BufferedImage image = new BufferedImage(640, 360, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(new Color(170, 190, 215));
        g.fillRect(0, 0, 640, 360);
        g.setColor(new Color(90, 100, 80));
        g.fillRect(0, 250, 640, 110);
        g.setColor(new Color(30, 30, 32));
        g.setStroke(new BasicStroke(3));
        double angle = Math.toRadians(140 - 3 * i);
        g.draw(new Line2D.Double(320, 300, 320 + 240 * Math.cos(angle), 300 - 240 * Math.sin(angle)));
        g.dispose();
        return image;
    }

    /** Peak signal to noise of BT.709 luma, decibels. */
    private static double greyPeakToNoise(BufferedImage one, BufferedImage two) {
        byte[] a = ((DataBufferByte) one.getRaster().getDataBuffer()).getData();
        byte[] b = ((DataBufferByte) two.getRaster().getDataBuffer()).getData();
        double sum = 0;
        for (int i = 0; i < a.length; i += 3) {
            double d = 0.0722 * ((a[i] & 255) - (b[i] & 255))
                    + 0.7152 * ((a[i + 1] & 255) - (b[i + 1] & 255))
                    + 0.2126 * ((a[i + 2] & 255) - (b[i + 2] & 255));
            sum += d * d;
        }
        return 10 * Math.log10(255.0 * 255 * a.length / 3 / sum);
    }
}
