package bendline.footage;

import bendline.image.VideoPlanes;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;

/**
 * One decoded frame in colour, for people to look at.
 *
 * @param index decoded frames counted from 0
 * @param seconds clip time, as in {@link Frame}
 * @param image upright, square pixels, {@link BufferedImage#TYPE_3BYTE_BGR}; new for each frame
 */
public record Picture(int index, double seconds, BufferedImage image) {

    /** The same as video holds it; an odd last column or row is left out. */
    public VideoPlanes planes() {
        byte[] bgr = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        return VideoPlanes.ofBgr(bgr, image.getWidth(), image.getHeight());
    }
}
