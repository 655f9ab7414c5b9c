package bendline.report;

import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import bendline.footage.Footage;
import bendline.footage.Picture;
import bendline.footage.PictureReader;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** One clip with a cast of either set beside the other, both let go at the same moment, rods equally long, at quarter speed. */
final class SideBySide {

    private static final int PANEL = 640;
    private static final int RATE = 30;
    private static final double SLOWER = 4;
    private static final double FROM = -1.2;
    private static final double TO = 0.8;
    private static final int LETTERS = 22;
    private static final int BITS = 4_000_000;

    private SideBySide() {}

    /** Reads one clip forwards and holds the frame that is shown at a time. */
    private static final class Player implements AutoCloseable {

        private final SetPictures set;
        private final PictureReader reader;
        private @Nullable Picture shown;
        private @Nullable Picture next;

        Player(SetPictures set) {
            this.set = set;
            this.reader = Footage.open(set.film()).pictures();
            this.next = reader.next();
        }

        /** The last frame that starts at or before a time; the first before that. */
        @Nullable
        Picture at(double afterRelease) {
            while (next != null && (shown == null || next.seconds() <= set.clipSeconds(afterRelease) + 1e-6)) {
                shown = next;
                next = reader.next();
            }
            return shown;
        }

        @Override
        public void close() {
            reader.close();
        }
    }

    static void write(SetPictures a, SetPictures b, String[] labels, Path file) throws IOException {
        int height = SetPictures.height(PANEL);
        int strip = 3 * LETTERS / 2 * 2;
        BufferedImage canvas = new BufferedImage(2 * PANEL, height + strip, BufferedImage.TYPE_3BYTE_BGR);
        try (Player left = new Player(a);
                Player right = new Player(b);
                ClipWriter writer = new ClipWriter(
                        file, canvas.getWidth(), canvas.getHeight(), ClipWriterSettings.of(RATE, BITS))) {
            int frames = (int) Math.round((TO - FROM) * SLOWER * RATE);
            for (int i = 0; i < frames; i++) {
                double t = FROM + i / (SLOWER * RATE);
                Graphics2D g = canvas.createGraphics();
                g.setColor(PictureColours.CASING);
                g.fillRect(0, 0, canvas.getWidth(), canvas.getHeight());
                panel(g, new Rectangle(0, 0, PANEL - 2, height), a, left.at(t));
                panel(g, new Rectangle(PANEL + 2, 0, PANEL - 2, height), b, right.at(t));
                words(g, labels, t, height);
                g.dispose();
                writer.write(canvas, i / (double) RATE);
            }
        }
    }

    private static void panel(Graphics2D g, Rectangle at, SetPictures set, @Nullable Picture picture) {
        if (picture != null) {
            PanelPainter.draw(g, at, set, picture);
        }
    }

    private static void words(Graphics2D g, String[] labels, double t, int top) {
        if (!Lettering.works()) {
            return;
        }
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setColor(Color.WHITE);
        int y = top + 3 * LETTERS / 2;
        g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, LETTERS));
        g.drawString(labels[0], LETTERS, y);
        g.drawString(labels[1], PANEL + LETTERS, y);
        String clock = Words.of("%+.0f ms", 1000 * t);
        g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, LETTERS));
        g.drawString(clock, 2 * PANEL - LETTERS - g.getFontMetrics().stringWidth(clock), y);
    }
}
