package bendline.body;

import org.jspecify.annotations.Nullable;

/**
 * How a rod is held.
 *
 * @param upper which of the caster's wrists is nearer to the tip, null where it cannot be told
 * @param apartPx from the upper to the lower wrist along the rod, pixels; NaN where it cannot be told
 * @param apartSdPx its 68 % uncertainty
 * @param basis what it rests on, or why it cannot be told
 */
public record RodHold(@Nullable Joint upper, double apartPx, double apartSdPx, String basis) {

    static RodHold unknown(String why) {
        return new RodHold(null, Double.NaN, Double.NaN, why);
    }

    /** Whether it is known which hand is which. */
    public boolean known() {
        return upper != null;
    }
}
