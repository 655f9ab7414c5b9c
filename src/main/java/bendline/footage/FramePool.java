package bendline.footage;

import bendline.image.VideoPlanes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;

/**
 * Native 4:2:0 frames (BT.709, limited range) that go round between whoever fills and whoever encodes them. There are so many at
 * most, so that memory has an end; who comes when all are out waits.
 */
final class FramePool implements AutoCloseable {

    /** Enough for half a second at 60 frames per second of full HD with a panel. */
    private static final long MOST_BYTES = 200_000_000;

    private static final int FEWEST = 4;
    private static final int MOST = 40;

    private final int width;
    private final int height;
    private final int most;
    private final List<AVFrame> made = new ArrayList<>();
    private final BlockingQueue<AVFrame> free;

    FramePool(int width, int height) {
        this.width = width;
        this.height = height;
        long fit = MOST_BYTES / (3L * width * height / 2);
        this.most = (int) Math.max(FEWEST, Math.min(MOST, fit));
        this.free = new ArrayBlockingQueue<>(most);
    }

    /** A frame that may be written to. */
    AVFrame take() throws IOException {
        AVFrame frame = free.poll();
        if (frame == null) {
            frame = made.size() < most ? make() : await();
        }
        Native.check(avutil.av_frame_make_writable(frame), "take memory for a frame");
        return frame;
    }

    private AVFrame await() throws IOException {
        try {
            return free.take();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("stopped while a clip was written", e);
        }
    }

    private AVFrame make() throws IOException {
        AVFrame frame = avutil.av_frame_alloc();
        made.add(frame);
        frame.format(avutil.AV_PIX_FMT_YUV420P).width(width).height(height);
        frame.colorspace(avutil.AVCOL_SPC_BT709).color_range(avutil.AVCOL_RANGE_MPEG);
        Native.check(avutil.av_frame_get_buffer(frame, 0), "take memory for a " + width + "x" + height + " frame");
        return frame;
    }

    /** Takes a frame back; from any thread. */
    void give(AVFrame frame) {
        free.add(frame);
    }

    /** Fills a writable frame with planes of its size. */
    static void fill(AVFrame frame, VideoPlanes picture) {
        copy(picture.luma(), frame, 0, picture.width(), picture.height());
        copy(picture.blue(), frame, 1, picture.width() / 2, picture.height() / 2);
        copy(picture.red(), frame, 2, picture.width() / 2, picture.height() / 2);
    }

    private static void copy(byte[] from, AVFrame frame, int plane, int columns, int rows) {
        int stride = frame.linesize(plane);
        long bytes = (long) stride * (rows - 1) + columns;
        ByteBuffer to = frame.data(plane).capacity(bytes).asByteBuffer();
        for (int y = 0; y < rows; y++) {
            to.put(y * stride, from, y * columns, columns);
        }
    }

    /** Lets go of all of them; none may be in use any more. */
    @Override
    public void close() {
        made.forEach(avutil::av_frame_free);
        made.clear();
    }
}
