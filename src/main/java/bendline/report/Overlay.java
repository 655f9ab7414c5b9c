package bendline.report;

import bendline.image.VideoPlanes;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.Arrays;

/**
 * A clear sheet to draw on that is laid over a picture. Only the squares that were drawn on are touched, so that the rest of the
 * picture stays what it is, to the bit, and costs nothing.
 */
final class Overlay {

    /** Side of a square in pixels, that of the coder's own. */
    static final int SIDE = 16;

    private final BufferedImage sheet;
    private final int[] argb;
    private final boolean[] drawn;
    private final int width;
    private final int height;
    private final int across;

    /** Both sizes are even. */
    Overlay(int width, int height) {
        this.width = width;
        this.height = height;
        this.across = (width + SIDE - 1) / SIDE;
        this.sheet = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB_PRE);
        this.argb = ((DataBufferInt) sheet.getRaster().getDataBuffer()).getData();
        this.drawn = new boolean[across * ((height + SIDE - 1) / SIDE)];
    }

    /** To draw on the sheet, which is clear again. */
    Graphics2D clean() {
        for (int i = 0; i < drawn.length; i++) {
            if (drawn[i]) {
                for (int y = top(i); y < bottom(i); y++) {
                    Arrays.fill(argb, y * width + left(i), y * width + right(i), 0);
                }
            }
        }
        return sheet.createGraphics();
    }

    /** Lays what was drawn over a picture of the sheet's size. */
    void onto(VideoPlanes picture) {
        for (int i = 0; i < drawn.length; i++) {
            drawn[i] = somethingIn(i);
            if (drawn[i]) {
                picture.cover(argb, left(i), top(i), SIDE);
            }
        }
    }

    private boolean somethingIn(int square) {
        int any = 0;
        for (int y = top(square); y < bottom(square); y++) {
            for (int at = y * width + left(square); at < y * width + right(square); at++) {
                any |= argb[at];
            }
        }
        return any != 0;
    }

    private int left(int square) {
        return square % across * SIDE;
    }

    private int right(int square) {
        return Math.min(width, left(square) + SIDE);
    }

    private int top(int square) {
        return square / across * SIDE;
    }

    private int bottom(int square) {
        return Math.min(height, top(square) + SIDE);
    }
}
