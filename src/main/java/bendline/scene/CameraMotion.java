package bendline.scene;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.List;

/**
 * Where each frame's pixels lie in the reference picture, which is the first frame.
 *
 * @param toReference one map per frame, picture pixels to reference pixels
 * @param largestShiftPx largest shift of the picture's centre or corner against the reference, pixels
 * @param trusted whether the background gave enough to measure the motion; where not, the maps are identities
 */
public record CameraMotion(List<Homography> toReference, double largestShiftPx, boolean trusted) {

    /** Copies the list. */
    public CameraMotion {
        toReference = List.copyOf(toReference);
    }

    /** A point of a frame's picture, in the reference picture. */
    public Point toReference(int frame, Point inPicture) {
        return toReference.get(frame).apply(inPicture);
    }

    /** A point of the reference picture, in a frame's picture. */
    public Point toPicture(int frame, Point inReference) {
        return toReference.get(frame).inverse().apply(inReference);
    }
}
