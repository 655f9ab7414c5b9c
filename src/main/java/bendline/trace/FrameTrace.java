package bendline.trace;

import bendline.geometry.Polyline;
import org.jspecify.annotations.Nullable;

/**
 * What was followed in one frame, reference-picture pixels.
 *
 * @param frame decoded frames counted from 0
 * @param seconds clip time
 * @param grip the upper hand on the rod
 * @param tip the rod tip
 * @param rig the feeder or lead
 * @param blank the blank's centre line from grip to tip, or null where the blank was not found
 * @param buttAngleSd 68 % uncertainty of the blank's direction at the grip, radians; NaN where the blank was not found
 * @param acrossSdPx 68 % uncertainty of the blank's outer end across the blank, pixels; what it is along the blank hardly changes the
 *     shape; NaN where the blank was not found
 */
public record FrameTrace(
        int frame,
        double seconds,
        Tracked grip,
        Tracked tip,
        Tracked rig,
        @Nullable Polyline blank,
        double buttAngleSd,
        double acrossSdPx) {

    /** One of whose blank it is not told apart how far the end may be off across and along: all of the tip's radius may be across. */
    public FrameTrace(
            int frame,
            double seconds,
            Tracked grip,
            Tracked tip,
            Tracked rig,
            @Nullable Polyline blank,
            double buttAngleSd) {
        this(frame, seconds, grip, tip, rig, blank, buttAngleSd, blank == null ? Double.NaN : tip.sdPx());
    }

    /** The same with the rig elsewhere. */
    public FrameTrace withRig(Tracked other) {
        return new FrameTrace(frame, seconds, grip, tip, other, blank, buttAngleSd, acrossSdPx);
    }
}
