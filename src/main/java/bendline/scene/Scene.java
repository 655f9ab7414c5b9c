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
import org.jspecify.annotations.Nullable;

/**
 * The still part of a clip: how the camera moved and what the background looks like.
 *
 * @param motion where each frame lies in the reference picture
 * @param backdrop in reference coordinates
 * @param glimpses pictures at equal steps through the clip, in order of time
 */
public record Scene(CameraMotion motion, Backdrop backdrop, List<Glimpse> glimpses) {

    /** Frames kept for the background's median; memory stays constant however long the clip is. */
    private static final int MOST_SAMPLES = 60;

    /** With fewer, though the clip holds more frames, it is read again: its header spoke of a longer one. */
    private static final int ENOUGH_SAMPLES = MOST_SAMPLES / 2;

    /** From so many frames on there is something to follow. */
    private static final int FEWEST_FRAMES = 8;

    /** Copies the list. */
    public Scene {
        glimpses = List.copyOf(glimpses);
    }

    /**
     * Reads the clip, as a rule once: what the clip is, which {@link Footage#survey} tells from then on, comes of the same decoding. Only
     * where its header is wrong about how many frames there are it is read again.
     *
     * @param progress told the share that is done
     * @return null for a clip of a few frames, which nothing can be followed in
     */
    public static @Nullable Scene survey(Footage footage, DoubleConsumer progress) {
        Reading reading = Reading.of(footage, footage.expectedFrames(), progress);
        int frames = footage.survey(done -> {}).frames();
        if (frames < FEWEST_FRAMES) {
            return null;
        }
        if (!reading.enough(frames)) {
            reading = Reading.of(footage, frames, progress);
        }
        Backdrop backdrop = reading.samples.backdrop();
        return new Scene(reading.camera.motion(), backdrop, reading.samples.intoGlimpses(backdrop));
    }

    /**
     * What one way through a clip gathers.
     *
     * @param camera how it moves
     * @param samples every so manieth frame
     * @param step how manieth
     */
    private record Reading(CameraTracker camera, Backdrop.Samples samples, int step) {

        /** @param expected how many frames there should be; 0 where that is not known */
        static Reading of(Footage footage, int expected, DoubleConsumer progress) {
            int step = expected < 2 * MOST_SAMPLES ? 1 : expected / MOST_SAMPLES + 1;
            Reading out = new Reading(new CameraTracker(), new Backdrop.Samples(), step);
            try (LumaReader reader = footage.tinted()) {
                for (Frame f = reader.next(); f != null; f = reader.next()) {
                    Homography map = out.camera.add(f.luma());
                    if (f.index() % step == step / 2 && out.samples.size() < 2 * MOST_SAMPLES) {
                        out.samples.add(f, map);
                    } else {
                        reader.giveBack(f);
                    }
                    progress.accept(reader.progress());
                }
            }
            return out;
        }

        /** Whether the samples are spread over all of so many frames, and are not too few. */
        boolean enough(int frames) {
            int spread = frames / step;
            return spread < 2 * MOST_SAMPLES && (step == 1 || spread >= ENOUGH_SAMPLES);
        }
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
