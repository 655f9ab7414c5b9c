package bendline.body;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The caster's body through the frames that were looked at.
 *
 * @param sights in order of time, only frames in which the body was found
 * @param asked frames that were looked at
 * @param heightPx how tall the person would stand, pixels; NaN if nobody was followed
 * @param heightSdPx its 68 % uncertainty
 * @param hands how the rod is held
 * @param trouble why nobody could be followed, for the user; null if somebody was
 */
public record BodyTrace(
        List<BodySight> sights,
        int asked,
        double heightPx,
        double heightSdPx,
        RodHold hands,
        @Nullable String trouble) {

    /** Copies the list. */
    public BodyTrace {
        sights = List.copyOf(sights);
    }

    /** Nobody was followed. */
    public static BodyTrace nobody(int asked, String why) {
        return new BodyTrace(List.of(), asked, Double.NaN, Double.NaN, RodHold.unknown(why), why);
    }

    /** The body in a frame, or null. */
    public @Nullable BodySight at(int frame) {
        int low = 0;
        int high = sights.size() - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            int f = sights.get(middle).frame();
            if (f == frame) {
                return sights.get(middle);
            }
            if (f < frame) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return null;
    }
}
