package bendline.footage;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/** Decoded frames with their repaired times; knows at the end what the clip was. */
final class TimedFrames implements AutoCloseable {

    private final Decoder decoder;
    private final Timeline timeline;
    private final Consumer<ClipInfo> atEnd;
    private final ArrayDeque<AVFrame> waiting = new ArrayDeque<>();
    private final List<Double> times = new ArrayList<>();
    private @Nullable AVFrame current;
    private @Nullable UprightSize size;
    private boolean ended;
    private boolean told;

    TimedFrames(Decoder decoder, Consumer<ClipInfo> atEnd) {
        this.decoder = decoder;
        this.timeline = new Timeline(decoder.nominalStep());
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
        if (size == null) {
            size = UprightSize.of(current.width(), current.height(), decoder.pixelAspect(current), decoder.turn());
        }
        times.add(timeline.take());
        return true;
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

    private void finish() {
        if (told) {
            return;
        }
        told = true;
        if (times.size() < 2 || size == null) {
            throw new FootageException("\"" + decoder.fileName() + "\" holds "
                    + (times.isEmpty() ? "no picture that can be decoded" : "one frame only: not a film")
                    + "; give a clip that shows the whole cast.");
        }
        atEnd.accept(info(size));
    }

    private ClipInfo info(UprightSize upright) {
        List<String> notes = new ArrayList<>(decoder.notes());
        notes.addAll(timeline.notes());
        double span = times.get(times.size() - 1);
        ClipInfo bare = info(upright, span, new SlowMotion(1, "as played"), notes);
        double step = bare.medianStepSeconds();
        if (decoder.turn().mirrored()) {
            notes.add("The clip is tagged as mirrored and was put right: left and right are as in the tag's view.");
        }
        return info(upright, span + step, slowMotion(step), notes);
    }

    private ClipInfo info(UprightSize upright, double duration, SlowMotion slow, List<String> notes) {
        return new ClipInfo(
                upright.width(),
                upright.height(),
                times.size(),
                duration,
                decoder.turn().clockwiseDegrees(),
                decoder.turn().mirrored(),
                slow,
                times,
                notes);
    }

    private SlowMotion slowMotion(double step) {
        double rate = decoder.captureRate();
        double factor = rate * step;
        if (!(factor > 0)) {
            return new SlowMotion(1, "as played: the clip carries no capture rate");
        }
        if (factor > 1 / 1.5 && factor < 1.5) {
            return new SlowMotion(
                    1,
                    String.format(Locale.ROOT, "capture rate tag %.4g per second is the stored rate: real time", rate));
        }
        return new SlowMotion(
                factor,
                String.format(
                        Locale.ROOT,
                        "capture rate tag %.4g per second over stored rate %.4g per second",
                        rate,
                        1 / step));
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
