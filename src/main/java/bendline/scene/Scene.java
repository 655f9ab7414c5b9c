package bendline.scene;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Homography;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The still part of a clip: how the camera moved and what the background looks like.
 *
 * @param motion where each frame lies in the reference picture
 * @param backdrop in reference coordinates
 * @param glimpses a few pictures, spread over the clip
 */
public record Scene(CameraMotion motion, Backdrop backdrop, List<Glimpse> glimpses) {

    /** Frames kept for the background's median; memory stays constant however long the clip is. */
    private static final int MOST_SAMPLES = 60;

    private static final int MOST_GLIMPSES = 32;

    /** Copies the list. */
    public Scene {
        glimpses = List.copyOf(glimpses);
    }

    /**
     * Reads the clip once.
     *
     * @param progress told the share that is done
     */
    public static Scene survey(Footage footage, ClipInfo info, DoubleConsumer progress) {
        CameraTracker camera = new CameraTracker();
        Backdrop.Samples samples = new Backdrop.Samples();
        int step = Math.max(1, info.frames() / MOST_SAMPLES + 1);
        try (LumaReader reader = footage.tinted()) {
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                Homography map = camera.add(f.luma());
                if (f.index() % step == step / 2 || info.frames() < 2 * MOST_SAMPLES) {
                    samples.add(f, map);
                } else {
                    reader.giveBack(f);
                }
                progress.accept((f.index() + 1.0) / info.frames());
            }
        }
        Backdrop backdrop = samples.backdrop();
        return new Scene(camera.motion(), backdrop, samples.glimpses(backdrop, MOST_GLIMPSES));
    }

    /**
     * The background behind a thing that has been followed, from frames in which it is known what it covers: a thing that rests
     * in one place for most of a clip is else taken for background there.
     *
     * @param covers at most one a frame, for at least three frames
     * @param progress told the share that is done
     */
    public Backdrop behind(Footage footage, ClipInfo info, List<Cover> covers, DoubleConsumer progress) {
        Map<Integer, Cover> byFrame = covers.stream().collect(Collectors.toMap(Cover::frame, Function.identity()));
        Backdrop.Samples samples = new Backdrop.Samples();
        try (LumaReader reader = footage.tinted()) {
            for (int left = byFrame.size(); left > 0; left--) {
                Frame f = reader.next(byFrame::containsKey);
                if (f == null) {
                    break;
                }
                samples.add(f, motion.toReference().get(f.index()), byFrame.get(f.index()));
                progress.accept((f.index() + 1.0) / info.frames());
            }
        }
        return samples.backdrop();
    }
}
