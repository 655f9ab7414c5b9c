package bendline.footage;

import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * FFmpeg's scaler with its buffers: changes size and pixel format of decoded frames. Of an interlaced frame it takes the
 * first field only, the moment the frame's time belongs to.
 */
final class Scaler implements AutoCloseable {

    private static final int PLANES = 4;
    /** The scaler's vector code may write a little past a row. */
    private static final int SLACK = 64;

    private SwsContext context = new SwsContext(null);
    private final PointerPointer<BytePointer> sourcePlanes = new PointerPointer<>(PLANES);
    private final IntPointer sourceStrides = new IntPointer(PLANES);
    private final PointerPointer<BytePointer> targetPlanes = new PointerPointer<>(PLANES);
    private final IntPointer targetStrides = new IntPointer(PLANES);
    private BytePointer buffer = new BytePointer();

    /**
     * Converts a frame into the buffer.
     *
     * @param format a one-plane pixel format
     * @param rowBytes bytes of a row of the wanted width
     * @return bytes from row to row in the buffer
     */
    int convert(AVFrame frame, UprightSize size, int format, int rowBytes) {
        int rows = pointAtSource(frame);
        prepare(frame, rows, size, format);
        int stride = (rowBytes + SLACK - 1) / SLACK * SLACK;
        long bytes = (long) stride * size.squareHeight() + SLACK;
        if (buffer.capacity() < bytes) {
            buffer.close();
            buffer = new BytePointer(bytes);
        }
        targetPlanes.put(0, buffer);
        targetStrides.put(0, stride);
        swscale.sws_scale(context, sourcePlanes, sourceStrides, 0, rows, targetPlanes, targetStrides);
        return stride;
    }

    /** What was converted last; rows from the top. */
    BytePointer buffer() {
        return buffer;
    }

    /** Every other row where the frame is interlaced; returns the rows to read. */
    private int pointAtSource(AVFrame frame) {
        boolean interlaced = Pixels.interlaced(frame) && frame.height() > 1;
        boolean bottom = (frame.flags() & AVFrame.AV_FRAME_FLAG_TOP_FIELD_FIRST) == 0;
        for (int i = 0; i < PLANES; i++) {
            BytePointer plane = frame.data(i);
            int stride = frame.linesize(i);
            if (plane != null && !plane.isNull() && interlaced && bottom) {
                plane = plane.getPointer(BytePointer.class, stride);
            }
            sourcePlanes.put(i, plane);
            sourceStrides.put(i, interlaced ? 2 * stride : stride);
        }
        return interlaced ? frame.height() / 2 : frame.height();
    }

    private void prepare(AVFrame frame, int rows, UprightSize size, int format) {
        boolean same = size.fits(frame.width(), rows);
        int method = size.squareWidth() < frame.width() ? swscale.SWS_AREA : swscale.SWS_BICUBIC;
        // Exact rounding bars the vector code that only changes the format; there it is off by a level at most.
        int rounding = same && format == avutil.AV_PIX_FMT_BGR24 ? 0 : swscale.SWS_ACCURATE_RND;
        context = swscale.sws_getCachedContext(
                context,
                frame.width(),
                rows,
                frame.format(),
                size.squareWidth(),
                size.squareHeight(),
                format,
                method | rounding,
                null,
                null,
                (DoublePointer) null);
        if (context == null || context.isNull()) {
            throw new FootageException(
                    "The clip's pictures are stored in a way that cannot be converted; export the clip as H.264.");
        }
        int full = frame.color_range() == avutil.AVCOL_RANGE_JPEG ? 1 : 0;
        // Grey keeps the range it is stored in, like a luma plane that is copied; colour is for screens.
        int targetFull = format == avutil.AV_PIX_FMT_GRAY8 ? full : 1;
        IntPointer matrix = swscale.sws_getCoefficients(matrixOf(frame));
        swscale.sws_setColorspaceDetails(context, matrix, full, matrix, targetFull, 0, 1 << 16, 1 << 16);
    }

    /** Untagged pictures follow the custom of the trade: high definition is BT.709, smaller is BT.601. */
    static int matrixOf(AVFrame frame) {
        if (frame.colorspace() != avutil.AVCOL_SPC_UNSPECIFIED) {
            return frame.colorspace();
        }
        boolean large = Math.min(frame.width(), frame.height()) >= 720;
        return large ? swscale.SWS_CS_ITU709 : swscale.SWS_CS_ITU601;
    }

    @Override
    public void close() {
        swscale.sws_freeContext(context);
        sourcePlanes.close();
        sourceStrides.close();
        targetPlanes.close();
        targetStrides.close();
        buffer.close();
    }
}
