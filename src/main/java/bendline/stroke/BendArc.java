package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import org.jspecify.annotations.Nullable;

/**
 * The blank of one frame in the plane of the cast: x towards the water, y up, from the place of the upper hand at the start of
 * the forward stroke; metres, or rod lengths above the hand where no length in metres is known.
 *
 * @param frame decoded frame
 * @param clipSeconds clip time
 * @param realSeconds real time, from the same zero
 * @param line hand to tip, or as far as the blank was seen
 * @param sd 68 % uncertainty of its points across it
 * @param whole whether the tip was seen
 * @param rig the rig, or null where it was not seen
 * @param misplaced how far an end of it must be off, since its length is not the rod's; 0 for not
 */
public record BendArc(
        int frame,
        double clipSeconds,
        double realSeconds,
        Polyline line,
        double sd,
        boolean whole,
        @Nullable Point rig,
        double misplaced) {

    /** An arc as long as the rod. */
    public BendArc(
            int frame,
            double clipSeconds,
            double realSeconds,
            Polyline line,
            double sd,
            boolean whole,
            @Nullable Point rig) {
        this(frame, clipSeconds, realSeconds, line, sd, whole, rig, 0);
    }

    /** Uncertainty of its points, what its length says against them too. */
    double pointSd() {
        return Math.hypot(sd, misplaced);
    }
}
