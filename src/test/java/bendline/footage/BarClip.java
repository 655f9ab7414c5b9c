package bendline.footage;

import bendline.image.Luma;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.IntStream;

/**
 * Clips whose every frame tells its own number: along the top a white cell, a black cell, then ten cells from the lowest bit
 * up, 16 pixels each; a white square top left and a black one bottom right tell which way is up.
 */
final class BarClip {

    static final int WIDTH = 320;
    static final int HEIGHT = 240;
    private static final int BITS = 10;
    private static final int CELL = 16;
    private static final int FIRST_BIT = 72;
    private static final int BAR_ROW = 15;

    private BarClip() {}

    /** Even times, the first at 0. */
    static double[] steady(int frames, double rate) {
        return IntStream.range(0, frames).mapToDouble(i -> i / rate).toArray();
    }

    /** Writes a frame for each time; frame i shows number i. */
    static Path write(Path file, double[] times, ClipWriterSettings settings) throws IOException {
        try (ClipWriter writer = new ClipWriter(file, WIDTH, HEIGHT, settings)) {
            for (int i = 0; i < times.length; i++) {
                writer.write(picture(i), times[i]);
            }
        }
        return file;
    }

    static Path write(Path file, double[] times) throws IOException {
        return write(file, times, ClipWriterSettings.of(30, 3_000_000));
    }

    static BufferedImage picture(int number) {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        g.setColor(new Color(155, 174, 195));
        g.fillRect(0, 0, WIDTH, HEIGHT);
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, 24, 24);
        g.fillRect(40, 8, CELL, CELL);
        g.setColor(Color.BLACK);
        g.fillRect(WIDTH - 24, HEIGHT - 24, 24, 24);
        g.fillRect(56, 8, CELL, CELL);
        for (int bit = 0; bit < BITS; bit++) {
            g.setColor((number >> bit & 1) == 1 ? Color.WHITE : Color.BLACK);
            g.fillRect(FIRST_BIT + bit * CELL, 8, CELL, CELL);
        }
        g.dispose();
        return image;
    }

    /** The number that an upright frame shows. */
    static int number(Luma luma) {
        int middle = (patch(luma, 40 + CELL / 2, BAR_ROW) + patch(luma, 56 + CELL / 2, BAR_ROW)) / 2;
        int number = 0;
        for (int bit = 0; bit < BITS; bit++) {
            number |= patch(luma, FIRST_BIT + bit * CELL + CELL / 2, BAR_ROW) > middle ? 1 << bit : 0;
        }
        return number;
    }

    /** Whether the white square is top left and the black one bottom right. */
    static boolean upright(Luma luma) {
        return patch(luma, 12, 12) > 180 && patch(luma, luma.width() - 12, luma.height() - 12) < 60;
    }

    /** Mean grey of a small square around a pixel. */
    static int patch(Luma luma, int column, int row) {
        int sum = 0;
        for (int dy = -2; dy <= 2; dy++) {
            for (int dx = -2; dx <= 2; dx++) {
                sum += luma.at(column + dx, row + dy);
            }
        }
        return sum / 25;
    }
}
