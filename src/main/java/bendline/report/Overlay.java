package bendline.report;

import bendline.image.VideoPlanes;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;

/**
 * A clear sheet to draw on that is laid over a picture. Only the squares that were drawn on are touched, so that the rest of the
 * picture stays what it is, to the bit, and costs nothing.
 */
final class Overlay {

    private final BufferedImage sheet;
    private final int[] argb;
    private final int[] clearRow;
    private final Squares drawn;

    /** Both sizes are even. */
    Overlay(int width, int height) {
        this.sheet = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB_PRE);
        this.argb = ((DataBufferInt) sheet.getRaster().getDataBuffer()).getData();
        this.clearRow = new int[width];
        this.drawn = new Squares(width, height);
    }

    /** To draw on the sheet, which is clear again. */
    Graphics2D clean() {
        drawn.clear(argb);
        return sheet.createGraphics();
    }

    /** Lays what was drawn over a picture of the sheet's size. */
    void onto(VideoPlanes picture) {
        drawn.compare(argb, clearRow, 0);
        drawn.cover(picture, argb);
    }
}
