package bendline.footage;

import bendline.image.Luma;

/**
 * One decoded frame, upright and with square pixels.
 *
 * @param index decoded frames counted from 0
 * @param seconds clip time: presentation time minus that of the first frame, after repair
 * @param luma grey plane
 */
public record Frame(int index, double seconds, Luma luma) {}
