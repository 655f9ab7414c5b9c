package bendline.footage;

import bendline.image.VideoPlanes;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import org.jspecify.annotations.Nullable;

/** Colour frames from the first to the last, for drawing on and showing. Not thread-safe. */
public final class PictureReader implements AutoCloseable {

    private final TimedFrames frames;
    private final Pixels pixels = new Pixels();
    private @Nullable VideoPlanes lent;

    PictureReader(TimedFrames frames) {
        this.frames = frames;
    }

    /**
     * The next frame, or null after the last.
     *
     * @throws FootageException where the clip turns out to hold fewer than two frames
     */
    public @Nullable Picture next() {
        return advance() ? picture() : null;
    }

    /** The frame with an index that has not been passed yet, without converting those before it. */
    Picture skipTo(int index) {
        while (advance()) {
            if (frames.index() == index) {
                return picture();
            }
        }
        throw new IllegalArgumentException("the clip has no frame " + index);
    }

    /**
     * Moves to the next frame, to be asked for by {@link #picture} or {@link #planes}; false at the end.
     *
     * @throws FootageException where the clip turns out to hold fewer than two frames
     */
    public boolean advance() {
        if (lent != null) {
            pixels.takeBack(lent);
            lent = null;
        }
        boolean more = frames.advance();
        if (more && frames.index() == 0) {
            pixels.expose(frames.frame(), frames.size());
        }
        return more;
    }

    /** Decoded frames counted from 0, of the frame moved to. */
    public int index() {
        return frames.index();
    }

    /** Clip time of the frame moved to. */
    public double seconds() {
        return frames.seconds();
    }

    /**
     * The planes of the frame moved to, as they are stored, upright; they hold until the next move. Null where the clip does not
     * keep them the way that {@link VideoPlanes} says.
     */
    public @Nullable VideoPlanes planes() {
        if (lent == null) {
            lent = pixels.planes(frames.frame(), frames.size());
        }
        return lent;
    }

    /** The frame moved to in colour. */
    public Picture picture() {
        UprightSize size = frames.size();
        BufferedImage image = new BufferedImage(size.width(), size.height(), BufferedImage.TYPE_3BYTE_BGR);
        byte[] target = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        pixels.bgr(frames.frame(), size, target);
        return new Picture(frames.index(), frames.seconds(), image);
    }

    @Override
    public void close() {
        pixels.close();
        frames.close();
    }
}
