package bendline.footage;

import bendline.image.Luma;
import org.jspecify.annotations.Nullable;

/**
 * One decoded frame, upright and with square pixels.
 *
 * @param index decoded frames counted from 0
 * @param seconds clip time: presentation time minus that of the first frame, after repair
 * @param luma grey plane
 * @param tint colour planes; null where they were not asked for or the clip does not hold them at half size
 */
public record Frame(
        int index, double seconds, Luma luma, @Nullable Tint tint) {}
