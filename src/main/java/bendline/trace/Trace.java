package bendline.trace;

import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The rod and the rig through the whole clip.
 *
 * @param width picture width, pixels
 * @param height picture height, pixels
 * @param frames one entry per decoded frame, in order
 * @param motion camera motion, to map between reference and picture
 * @param freeLengthPx length of the blank from grip to tip, pixels; NaN if no rod was found
 * @param freeLengthSdPx its 68 % uncertainty, pixels
 * @param trouble why no rod was found, for the user; null if one was
 */
public record Trace(
        int width,
        int height,
        List<FrameTrace> frames,
        CameraMotion motion,
        double freeLengthPx,
        double freeLengthSdPx,
        @Nullable String trouble) {

    /** Copies the list. */
    public Trace {
        frames = List.copyOf(frames);
    }

    /** The same with other frames. */
    public Trace with(List<FrameTrace> others) {
        return new Trace(width, height, others, motion, freeLengthPx, freeLengthSdPx, trouble);
    }

    /** Whether a rod was found at all. */
    public boolean foundRod() {
        return trouble == null;
    }

    /** A frame's trace in the pixels of that frame's own picture, for drawing and for files. */
    public FrameTrace inPicture(int frame) {
        FrameTrace f = frames.get(frame);
        return new FrameTrace(
                f.frame(),
                f.seconds(),
                moved(frame, f.grip()),
                moved(frame, f.tip()),
                moved(frame, f.rig()),
                f.blank() == null ? null : f.blank().map(p -> motion.toPicture(frame, p)),
                f.buttAngleSd(),
                f.acrossSdPx());
    }

    private Tracked moved(int frame, Tracked t) {
        Point p = t.position();
        return t.at(p == null ? null : motion.toPicture(frame, p));
    }
}
