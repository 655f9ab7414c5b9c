package bendline.footage;

import java.util.function.IntUnaryOperator;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.bytedeco.javacpp.ShortPointer;

/** Copies decoded frames to the Java heap: the grey plane as stored, or anything through FFmpeg's scaler. */
final class Pixels implements AutoCloseable {

    private SwsContext scaler = new SwsContext(null);
    private final PointerPointer<BytePointer> planes = new PointerPointer<>(4);
    private final IntPointer strides = new IntPointer(4);
    private BytePointer buffer = new BytePointer();

    /** The frame's own luma plane at stored size, or a conversion where it has none or the size must change. */
    byte[] luma(AVFrame frame, UprightSize size) {
        AVPixFmtDescriptor format = avutil.av_pix_fmt_desc_get(frame.format());
        if (size.fits(frame.width(), frame.height()) && hasLumaPlane(format)) {
            return format.comp(0).depth() == 8 ? bytes(frame) : shorts(frame, format);
        }
        return scaled(frame, size, avutil.AV_PIX_FMT_GRAY8, 1);
    }

    /** Blue, green, red bytes of the frame with square pixels, not yet turned. */
    byte[] bgr(AVFrame frame, UprightSize size) {
        return scaled(frame, size, avutil.AV_PIX_FMT_BGR24, 3);
    }

    private static boolean hasLumaPlane(AVPixFmtDescriptor format) {
        long unfit = avutil.AV_PIX_FMT_FLAG_RGB
                | avutil.AV_PIX_FMT_FLAG_PAL
                | avutil.AV_PIX_FMT_FLAG_BITSTREAM
                | avutil.AV_PIX_FMT_FLAG_HWACCEL
                | avutil.AV_PIX_FMT_FLAG_BE
                | avutil.AV_PIX_FMT_FLAG_FLOAT;
        int bytes = format.comp(0).depth() > 8 ? 2 : 1;
        return (format.flags() & unfit) == 0
                && format.comp(0).plane() == 0
                && format.comp(0).offset() == 0
                && format.comp(0).step() == bytes
                && format.comp(0).depth() <= 16;
    }

    private static byte[] bytes(AVFrame frame) {
        int width = frame.width();
        int height = frame.height();
        byte[] out = new byte[width * height];
        BytePointer plane = frame.data(0);
        int stride = frame.linesize(0);
        if (stride == width) {
            plane.get(out, 0, out.length);
            return out;
        }
        for (int y = 0; y < height; y++) {
            plane.position((long) y * stride).get(out, y * width, width);
        }
        return out;
    }

    private static byte[] shorts(AVFrame frame, AVPixFmtDescriptor format) {
        int width = frame.width();
        int height = frame.height();
        byte[] out = new byte[width * height];
        short[] row = new short[width];
        ShortPointer plane = new ShortPointer(frame.data(0));
        int stride = frame.linesize(0) / 2;
        int shift = format.comp(0).shift() + format.comp(0).depth() - 8;
        for (int y = 0; y < height; y++) {
            plane.position((long) y * stride).get(row, 0, width);
            for (int x = 0, to = y * width; x < width; x++, to++) {
                out[to] = (byte) ((row[x] & 0xffff) >> shift);
            }
        }
        return out;
    }

    private byte[] scaled(AVFrame frame, UprightSize size, int format, int bytesPerPixel) {
        int width = size.squareWidth();
        int height = size.squareHeight();
        int stride = (width * bytesPerPixel + 63) / 64 * 64;
        prepare(frame, width, height, format);
        if (buffer.capacity() < (long) stride * height + 64) {
            buffer.close();
            buffer = new BytePointer((long) stride * height + 64);
        }
        planes.put(0, buffer);
        strides.put(0, stride);
        swscale.sws_scale(scaler, frame.data(), frame.linesize(), 0, frame.height(), planes, strides);
        byte[] out = new byte[width * height * bytesPerPixel];
        for (int y = 0; y < height; y++) {
            buffer.position((long) y * stride).get(out, y * width * bytesPerPixel, width * bytesPerPixel);
        }
        buffer.position(0);
        return out;
    }

    private void prepare(AVFrame frame, int width, int height, int format) {
        scaler = swscale.sws_getCachedContext(
                scaler,
                frame.width(),
                frame.height(),
                frame.format(),
                width,
                height,
                format,
                swscale.SWS_BICUBIC | swscale.SWS_ACCURATE_RND,
                null,
                null,
                (DoublePointer) null);
        if (scaler == null || scaler.isNull()) {
            throw new FootageException(
                    "The pictures are stored in a way that cannot be converted; export the clip as H.264.");
        }
        IntPointer matrix = swscale.sws_getCoefficients(matrixOf(frame));
        int full = frame.color_range() == avutil.AVCOL_RANGE_JPEG ? 1 : 0;
        swscale.sws_setColorspaceDetails(scaler, matrix, full, matrix, 1, 0, 1 << 16, 1 << 16);
    }

    /** Untagged pictures follow the usual custom: high definition is BT.709, smaller is BT.601. */
    private static int matrixOf(AVFrame frame) {
        IntUnaryOperator custom = h -> h >= 720 ? swscale.SWS_CS_ITU709 : swscale.SWS_CS_ITU601;
        return frame.colorspace() == avutil.AVCOL_SPC_UNSPECIFIED
                ? custom.applyAsInt(Math.max(frame.height(), 9 * frame.width() / 16))
                : frame.colorspace();
    }

    @Override
    public void close() {
        swscale.sws_freeContext(scaler);
        planes.close();
        strides.close();
        buffer.close();
    }
}
