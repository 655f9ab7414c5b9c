package bendline.trace;

import bendline.scene.CameraMotion;
import java.util.List;

/**
 * What a few pictures, spread over the clip, show before the rod is followed through all of them.
 *
 * @param motion how the camera moved
 * @param sights one a picture looked at, in order of time
 * @param freePx upper hand to tip, pixels; NaN where no rod was found
 * @param longerRight by what share the rod looks longer pointing right than pointing left; NaN where no rod was found
 */
public record FirstSight(CameraMotion motion, List<Sight> sights, double freePx, double longerRight) {

    /** Copies the list. */
    public FirstSight {
        sights = List.copyOf(sights);
    }

    /**
     * One picture.
     *
     * @param seconds clip time
     * @param rod whether a curve of the rod's length shows from the hands
     * @param atEdge whether it ends at the edge of the picture, so that the tip may be outside
     */
    public record Sight(double seconds, boolean rod, boolean atEdge) {}
}
