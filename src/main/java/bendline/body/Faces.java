package bendline.body;

import bendline.geometry.Point;
import java.util.List;

/**
 * Where faces may be in each frame of a clip, wide enough to cover the whole head.
 *
 * @param byFrame one list a decoded frame
 */
public record Faces(List<List<Spot>> byFrame) {

    /**
     * A round patch.
     *
     * @param centre picture pixels
     * @param radius picture pixels
     */
    public record Spot(Point centre, double radius) {}

    /** Copies the lists. */
    public Faces {
        byFrame = byFrame.stream().map(List::copyOf).toList();
    }

    /** The patches of a frame; none beyond the end. */
    public List<Spot> in(int frame) {
        return frame >= 0 && frame < byFrame.size() ? byFrame.get(frame) : List.of();
    }
}
