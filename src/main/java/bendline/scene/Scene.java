package bendline.scene;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Homography;
import bendline.image.Luma;
import bendline.image.Warp;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;

/**
 * The still part of a clip: how the camera moved and what the background looks like.
 *
 * @param motion where each frame lies in the reference picture
 * @param background in reference coordinates
 */
public record Scene(CameraMotion motion, Background background) {

    /** Frames kept for the background's median; memory stays constant however long the clip is. */
    private static final int MOST_SAMPLES = 40;

    /**
     * Reads the clip once.
     *
     * @param progress told the share that is done
     */
    public static Scene survey(Footage footage, ClipInfo info, DoubleConsumer progress) {
        CameraTracker camera = new CameraTracker();
        List<Luma> samples = new ArrayList<>();
        int step = Math.max(1, info.frames() / MOST_SAMPLES + 1);
        try (LumaReader reader = footage.lumas()) {
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                Homography map = camera.add(f.luma());
                if (f.index() % step == step / 2 || info.frames() < 2 * MOST_SAMPLES) {
                    samples.add(Warp.apply(f.luma(), map));
                }
                progress.accept((f.index() + 1.0) / info.frames());
            }
        }
        return new Scene(camera.motion(), Background.of(samples));
    }
}
