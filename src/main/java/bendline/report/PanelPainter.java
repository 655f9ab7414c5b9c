package bendline.report;

import bendline.footage.Picture;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;

/** Draws a frame of one set's cast into a panel, cut and scaled so that it compares with the other's. */
final class PanelPainter {

    private static final Color OUTSIDE = new Color(0x28, 0x32, 0x35);

    private PanelPainter() {}

    /**
     * Draws.
     *
     * @param at the panel's place; its height is {@link SetPictures#height} of its width
     */
    static void draw(Graphics2D onto, Rectangle at, SetPictures set, Picture picture) {
        Graphics2D g = (Graphics2D) onto.create(at.x, at.y, at.width, at.height);
        g.setColor(OUTSIDE);
        g.fillRect(0, 0, at.width, at.height);
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.transform(set.toPanel(at.width));
        // Under the picture the marked clip carries a strip of words of its own.
        BufferedImage image = picture.image();
        set.veil().cover(image, picture.index());
        int height = Math.min(image.getHeight(), set.cast().picture().height());
        g.drawImage(image.getSubimage(0, 0, image.getWidth(), height), 0, 0, null);
        g.dispose();
    }
}
