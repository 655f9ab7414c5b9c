package bendline.benchmark;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import org.jspecify.annotations.Nullable;

/**
 * What is truly there in one frame, in pixels of the upright picture of that frame, at the middle of the exposure. Where
 * nobody holds a rod all that concerns it is null or NaN.
 *
 * @param seconds clip time
 * @param tip the rod tip, inside the picture or not
 * @param tipInView whether the tip is inside the picture and not hidden
 * @param rig the rig, or null where the truth does not know it
 * @param rigInView whether the rig is inside the picture, not whether it can be made out
 * @param rigHeld whether the rig still hangs on the drop: before the release
 * @param grip the upper hand on the rod
 * @param rod the whole rod, butt cap to tip
 * @param blank the rod from the grip to the tip
 * @param buttAngleDeg direction of the rod at the grip in the plane of the cast, degrees
 * @param chordRatio distance upper hand to tip over the free length, in the plane of the cast
 * @param camera from the picture of a camera that stands still to this frame's picture
 */
public record TruthFrame(
        double seconds,
        @Nullable Point tip,
        boolean tipInView,
        @Nullable Point rig,
        boolean rigInView,
        boolean rigHeld,
        @Nullable Point grip,
        @Nullable Polyline rod,
        @Nullable Polyline blank,
        double buttAngleDeg,
        double chordRatio,
        Homography camera) {}
