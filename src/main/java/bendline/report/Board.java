package bendline.report;

import bendline.image.VideoPlanes;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.Arrays;

/** A board of words or curves beside the picture. From frame to frame most of it stays, and only what changes is made video anew. */
final class Board {

    private final BufferedImage image;
    private final int[] argb;
    private final int[] before;
    private final Squares changed;
    private final VideoPlanes planes;

    /** Both sizes are even. */
    Board(int width, int height) {
        this.image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB_PRE);
        this.argb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        this.before = new int[argb.length];
        this.changed = new Squares(width, height);
        this.planes = VideoPlanes.black(width, height);
    }

    /** To draw on the board, which is empty again. */
    Graphics2D clean(Color ground) {
        Arrays.fill(argb, ground.getRGB());
        return image.createGraphics();
    }

    /** Puts the board into a picture, its upper left corner at an even column and row. */
    void onto(VideoPlanes picture, int left, int top) {
        changed.compare(argb, before, planes.width());
        changed.cover(planes, argb);
        System.arraycopy(argb, 0, before, 0, argb.length);
        picture.put(planes, left, top);
    }
}
