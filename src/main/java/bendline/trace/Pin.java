package bendline.trace;

import bendline.footage.ClipInfo;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A user's mark on one frame, in the coordinates that looks are in.
 *
 * @param frame decoded frames counted from 0
 * @param grip the upper hand, or null
 * @param tip the rod tip, or null
 * @param rig the rig, or null
 * @param mark as it was given
 */
record Pin(
        int frame,
        @Nullable Point grip,
        @Nullable Point tip,
        @Nullable Point rig,
        Mark mark) {

    /** How well a user points, pixels; common practice, no source. */
    static final double SD_PX = 2;

    /** By frame; marks on one frame count together. */
    static Map<Integer, Pin> of(List<Mark> marks, ClipInfo info, CameraMotion motion, Point origin) {
        Map<Integer, Mark> byFrame = new TreeMap<>();
        for (Mark mark : marks) {
            byFrame.merge(info.frameAt(mark.seconds() + 1e-6), mark, Mark::and);
        }
        Map<Integer, Pin> pins = new TreeMap<>();
        byFrame.forEach((frame, mark) -> {
            UnaryOperator<@Nullable Point> map =
                    p -> p == null ? null : motion.toReference(frame, p).minus(origin);
            pins.put(frame, new Pin(frame, map.apply(mark.grip()), map.apply(mark.tip()), map.apply(mark.rig()), mark));
        });
        return pins;
    }

    /** Whether it says where the rod is. */
    boolean placesRod() {
        return grip != null || tip != null;
    }

    /** Whether it says that a part can't be seen. */
    boolean hides(Part part) {
        return mark.hidden().contains(part);
    }
}
