package bendline.footage;

import java.awt.image.BufferedImage;

/**
 * One decoded frame in colour, for people to look at.
 *
 * @param index decoded frames counted from 0
 * @param seconds clip time, as in {@link Frame}
 * @param image upright, square pixels, {@link BufferedImage#TYPE_3BYTE_BGR}; new for each frame
 */
public record Picture(int index, double seconds, BufferedImage image) {}
