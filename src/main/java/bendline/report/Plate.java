package bendline.report;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;

/** Light letters on a dark plate in the bottom left corner of a picture. */
final class Plate {

    private Plate() {}

    /** Draws a line of text, made smaller if it would not fit. */
    static void draw(BufferedImage image, String text, int fontSize) {
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, fontSize));
        double room = image.getWidth() - 1.6 * fontSize;
        double width = g.getFontMetrics().stringWidth(text);
        if (width > room) {
            g.setFont(g.getFont().deriveFont((float) (fontSize * room / width)));
        }
        FontMetrics metrics = g.getFontMetrics();
        int pad = metrics.getHeight() / 4;
        int height = metrics.getHeight() + pad;
        g.setColor(PictureColours.PLATE);
        g.fillRect(0, image.getHeight() - height, metrics.stringWidth(text) + 4 * pad, height);
        g.setColor(PictureColours.LETTERS);
        g.drawString(text, 2 * pad, image.getHeight() - height + pad / 2 + metrics.getAscent());
        g.dispose();
    }
}
