package bendline.footage;

import bendline.image.DisplayCurve;
import bendline.image.Turn;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/** Decoded frames with their repaired times; knows at the end what the clip was. */
final class TimedFrames implements AutoCloseable {

    /** Nearly fourteen minutes at 240 frames per second: far more than a cast, far less than a computer's memory. */
    private static final int MOST_FRAMES = 200_000;

    private final Decoder decoder;
    private final UnaryOperator<Turn> turning;
    private final Timeline timeline;
    private final Consumer<ClipInfo> atEnd;
    private final ArrayDeque<AVFrame> waiting = new ArrayDeque<>();
    private final List<Double> times = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private @Nullable AVFrame current;
    private @Nullable UprightSize size;
    private int firstWidth;
    private int firstHeight;
    private int resized;
    private boolean ended;
    private boolean told;

    /**
     * @param turning from the turn that the clip states to the one applied
     * @param atEnd told what the clip is after its last frame
     */
    TimedFrames(Decoder decoder, UnaryOperator<Turn> turning, Consumer<ClipInfo> atEnd) {
        this.decoder = decoder;
        this.turning = turning;
        this.timeline = new Timeline(decoder.container().nominalStep());
        this.atEnd = atEnd;
    }

    /** Moves to the next frame; false at the end. */
    boolean advance() {
        release();
        while (!timeline.hasReady() && !ended) {
            AVFrame frame = decoder.next();
            if (frame == null) {
                ended = true;
                timeline.finish();
            } else {
                waiting.add(frame);
                timeline.offer(decoder.stamp(frame));
            }
        }
        if (!timeline.hasReady()) {
            finish();
            return false;
        }
        current = waiting.remove();
        times.add(timeline.take());
        if (times.size() > MOST_FRAMES) {
            throw new FootageException("\"" + decoder.container().file() + "\" holds more than " + MOST_FRAMES
                    + " frames; cut it to the casts.");
        }
        if (size == null) {
            size = learn(current);
            firstWidth = current.width();
            firstHeight = current.height();
        }
        resized += current.width() != firstWidth || current.height() != firstHeight ? 1 : 0;
        return true;
    }

    private UprightSize learn(AVFrame first) {
        DisplayCurve curve = Pixels.curve(first);
        if (curve == DisplayCurve.HLG || curve == DisplayCurve.PQ) {
            notes.add("The clip is high dynamic range (" + curve + "); pictures are shown in ordinary range.");
        }
        Turn turn = turning.apply(decoder.turn(first));
        return UprightSize.of(first.width(), first.height(), decoder.pixelAspect(first), turn);
    }

    /** The frame moved to last; valid until the next move. */
    AVFrame frame() {
        if (current == null) {
            throw new IllegalStateException("no frame has been moved to");
        }
        return current;
    }

    UprightSize size() {
        if (size == null) {
            throw new IllegalStateException("no frame has been moved to");
        }
        return size;
    }

    int index() {
        return times.size() - 1;
    }

    double seconds() {
        return times.get(times.size() - 1);
    }

    /** How far the clip has been read, 0 to 1, going by the length its header states. */
    double progress() {
        double stated = decoder.container().statedSeconds();
        return stated > 0 && !times.isEmpty() ? Math.min(1, seconds() / stated) : 0;
    }

    private void finish() {
        if (told) {
            return;
        }
        told = true;
        if (times.size() < 2 || size == null) {
            throw new FootageException("\"" + decoder.container().file() + "\" holds "
                    + (times.isEmpty() ? "no picture that can be decoded" : "one frame only and is not a film")
                    + "; give a clip that shows the whole cast.");
        }
        if (resized > 0) {
            notes.add(
                    "The stored picture changes its size on the way; all frames were brought to the size of the first.");
        }
        notes.addAll(decoder.damage().notes());
        notes.addAll(timeline.notes());
        atEnd.accept(Survey.of(decoder.container(), size, times, notes));
    }

    private void release() {
        if (current != null) {
            avutil.av_frame_free(current);
            current = null;
        }
    }

    @Override
    public void close() {
        release();
        waiting.forEach(avutil::av_frame_free);
        waiting.clear();
        decoder.close();
    }
}
