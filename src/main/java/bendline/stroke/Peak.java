package bendline.stroke;

import org.jspecify.annotations.Nullable;

/**
 * When a link of the chain is fastest.
 *
 * @param part which
 * @param seconds clip time, or null where it cannot be told
 * @param plusMinusSeconds 68 % uncertainty, clip time; NaN where it cannot be told
 * @param frame the frame shown at that time, or null
 * @param basis what it rests on, or why it cannot be told
 */
public record Peak(
        BodyPart part,
        @Nullable Double seconds,
        double plusMinusSeconds,
        @Nullable Integer frame,
        String basis) {

    static Peak unknown(BodyPart part, String why) {
        return new Peak(part, null, Double.NaN, null, why);
    }
}
