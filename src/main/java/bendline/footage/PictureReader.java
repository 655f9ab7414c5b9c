package bendline.footage;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import org.jspecify.annotations.Nullable;

/** Colour frames from the first to the last, for drawing on and showing. Not thread-safe. */
public final class PictureReader implements AutoCloseable {

    private final TimedFrames frames;
    private final Pixels pixels = new Pixels();

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

    private boolean advance() {
        boolean more = frames.advance();
        if (more && frames.index() == 0) {
            pixels.expose(frames.frame(), frames.size());
        }
        return more;
    }

    private Picture picture() {
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
