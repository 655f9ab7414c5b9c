package bendline.trace;

import bendline.geometry.Point;
import org.jspecify.annotations.Nullable;

/**
 * A followed point in one frame: seen with an uncertainty, or not seen with a reason.
 *
 * @param position reference-picture pixels; for a point that is not seen an interpolated guess for drawing, or null
 * @param sdPx radius within which the true point lies with 68 % probability, pixels; NaN when not seen
 * @param seen whether the point was measured in this frame
 * @param reason why it is not seen; empty when seen
 */
public record Tracked(@Nullable Point position, double sdPx, boolean seen, String reason) {

    /** A measured point. */
    public static Tracked seen(Point position, double sdPx) {
        return new Tracked(position, sdPx, true, "");
    }

    /** A point that was not measured. */
    public static Tracked notSeen(@Nullable Point guess, String reason) {
        return new Tracked(guess, Double.NaN, false, reason);
    }

    /** The same, moved to other coordinates. */
    public Tracked at(@Nullable Point moved) {
        return new Tracked(moved, sdPx, seen, reason);
    }
}
