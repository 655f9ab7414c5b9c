package bendline.body;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How a rod is held.
 *
 * @param upper which of the caster's wrists is nearer to the tip, null where it cannot be told
 * @param apartPx from the upper to the lower wrist along the rod, pixels; NaN where it cannot be told
 * @param apartSdPx its 68 % uncertainty
 * @param basis what it rests on, or why it cannot be told
 * @param leading by frame, the wrist that was seen nearer to the tip than the other; left and right may have been taken for each
 *     other there
 */
public record RodHold(
        @Nullable Joint upper, double apartPx, double apartSdPx, String basis, Map<Integer, Joint> leading) {

    /** Copies the map. */
    public RodHold {
        leading = Map.copyOf(leading);
    }

    /** A hold of which single frames tell nothing. */
    public RodHold(@Nullable Joint upper, double apartPx, double apartSdPx, String basis) {
        this(upper, apartPx, apartSdPx, basis, Map.of());
    }

    static RodHold unknown(String why) {
        return new RodHold(null, Double.NaN, Double.NaN, why);
    }

    /** The upper wrist in a frame: that of the whole clip, or where left and right change places, that which leads there; or null. */
    public @Nullable Joint upperIn(int frame) {
        return upper == null ? leading.get(frame) : upper;
    }

    /** Whether it is known which hand is which. */
    public boolean known() {
        return upper != null;
    }
}
