package bendline.footage;

import bendline.image.Luma;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/**
 * Grey frames from the first to the last. The values are those of the decoder's own luma plane: limited-range clips keep
 * 16 for black and 235 for white, ten-bit clips lose their two lowest bits. Each frame has arrays of its own until it is
 * given back. Not thread-safe.
 */
public final class LumaReader implements AutoCloseable {

    private final TimedFrames frames;
    private final boolean withTint;
    private final Pixels pixels = new Pixels();

    LumaReader(TimedFrames frames, boolean withTint) {
        this.frames = frames;
        this.withTint = withTint;
    }

    /**
     * The next frame, or null after the last.
     *
     * @throws FootageException where the clip turns out to hold fewer than two frames
     */
    public @Nullable Frame next() {
        return next(index -> true);
    }

    /**
     * The next of some frames, or null after the last; the pictures of those between are not copied.
     *
     * @param wanted by number, counted from 0
     * @throws FootageException where the clip turns out to hold fewer than two frames
     */
    public @Nullable Frame next(IntPredicate wanted) {
        do {
            if (!frames.advance()) {
                return null;
            }
        } while (!wanted.test(frames.index()));
        UprightSize size = frames.size();
        byte[] upright = pixels.luma(frames.frame(), size);
        Tint tint = withTint ? pixels.tint(frames.frame(), size) : null;
        return new Frame(frames.index(), frames.seconds(), new Luma(size.width(), size.height(), upright), tint);
    }

    /** How far the clip has been read, 0 to 1, going by the length its header states. */
    public double progress() {
        return frames.progress();
    }

    /**
     * Tells that nobody looks at a frame of this reader any more, so that a later one may be written over it. Optional: what is
     * not given back stays as it is.
     */
    public void giveBack(Frame frame) {
        pixels.takeBack(frame);
    }

    @Override
    public void close() {
        pixels.close();
        frames.close();
    }
}
