package bendline.footage;

import bendline.image.DisplayCurve;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.ShortPointer;
import org.jspecify.annotations.Nullable;

/** Copies decoded frames to the Java heap: the grey plane as stored, or anything through FFmpeg's scaler. */
final class Pixels implements AutoCloseable {

    private final Scaler scaler = new Scaler();
    private final NativeTurn turner = new NativeTurn();
    private double exposure = 1;

    /** Upright grey: the frame's own luma plane, or a conversion where it has none or its size must change. */
    byte[] luma(AVFrame frame, UprightSize size) {
        AVPixFmtDescriptor format = avutil.av_pix_fmt_desc_get(frame.format());
        if (!size.fits(frame.width(), frame.height()) || interlaced(frame) || !hasLumaPlane(format)) {
            int stride = scaler.convert(frame, size, avutil.AV_PIX_FMT_GRAY8, size.squareWidth());
            return upright(scaler.buffer(), stride, size, 1, new byte[size.squareWidth() * size.squareHeight()]);
        }
        if (format.comp(0).depth() == 8) {
            return upright(frame.data(0), frame.linesize(0), size, 1, new byte[frame.width() * frame.height()]);
        }
        return size.turn().apply(shorts(frame, format), frame.width(), frame.height(), 1);
    }

    /** Fills in upright blue, green, red bytes, as an ordinary screen shows them. */
    void bgr(AVFrame frame, UprightSize size, byte[] out) {
        DisplayCurve curve = curve(frame);
        if (curve == null) {
            int stride = scaler.convert(frame, size, avutil.AV_PIX_FMT_BGR24, 3 * size.squareWidth());
            upright(scaler.buffer(), stride, size, 3, out);
            return;
        }
        byte[] stored = size.turn().isNone() ? out : new byte[out.length];
        curve.toBgr(wide(frame, size), exposure, stored);
        if (stored != out) {
            byte[] turned = size.turn().apply(stored, size.squareWidth(), size.squareHeight(), 3);
            System.arraycopy(turned, 0, out, 0, out.length);
        }
    }

    private byte[] upright(BytePointer rows, int stride, UprightSize size, int bytesPerPixel, byte[] out) {
        int width = size.squareWidth();
        int height = size.squareHeight();
        int rowBytes = width * bytesPerPixel;
        if (!size.turn().isNone()) {
            turner.copy(size.turn(), rows, stride, width, height, bytesPerPixel, out);
        } else if (stride == rowBytes) {
            rows.get(out, 0, out.length);
        } else {
            for (int y = 0; y < height; y++) {
                rows.position((long) y * stride).get(out, y * rowBytes, rowBytes);
            }
            rows.position(0);
        }
        return out;
    }

    /** Fixes how bright a clip of high dynamic range is shown, by its first frame. */
    void expose(AVFrame first, UprightSize size) {
        DisplayCurve curve = curve(first);
        exposure = curve == null || curve == DisplayCurve.WIDE ? 1 : curve.exposure(wide(first, size));
    }

    private short[] wide(AVFrame frame, UprightSize size) {
        int rowSamples = 3 * size.squareWidth();
        short[] rgb = new short[rowSamples * size.squareHeight()];
        int stride = scaler.convert(frame, size, avutil.AV_PIX_FMT_RGB48LE, 2 * rowSamples);
        ShortPointer samples = new ShortPointer(scaler.buffer());
        for (int y = 0; y < size.squareHeight(); y++) {
            samples.position((long) y * stride / 2).get(rgb, y * rowSamples, rowSamples);
        }
        return rgb;
    }

    static boolean interlaced(AVFrame frame) {
        return (frame.flags() & AVFrame.AV_FRAME_FLAG_INTERLACED) != 0;
    }

    /** The curve that a picture needs to be shown on an ordinary screen; null where it was made for one. */
    static @Nullable DisplayCurve curve(AVFrame frame) {
        if (frame.color_trc() == avutil.AVCOL_TRC_ARIB_STD_B67) {
            return DisplayCurve.HLG;
        }
        if (frame.color_trc() == avutil.AVCOL_TRC_SMPTE2084) {
            return DisplayCurve.PQ;
        }
        return frame.color_primaries() == avutil.AVCOL_PRI_BT2020 ? DisplayCurve.WIDE : null;
    }

    private static boolean hasLumaPlane(AVPixFmtDescriptor format) {
        long unfit = avutil.AV_PIX_FMT_FLAG_RGB
                | avutil.AV_PIX_FMT_FLAG_PAL
                | avutil.AV_PIX_FMT_FLAG_BITSTREAM
                | avutil.AV_PIX_FMT_FLAG_HWACCEL
                | avutil.AV_PIX_FMT_FLAG_BE
                | avutil.AV_PIX_FMT_FLAG_FLOAT;
        int depth = format.comp(0).depth();
        return (format.flags() & unfit) == 0
                && format.comp(0).plane() == 0
                && format.comp(0).offset() == 0
                && format.comp(0).step() == (depth > 8 ? 2 : 1)
                && depth >= 8
                && depth <= 16;
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

    @Override
    public void close() {
        scaler.close();
        turner.close();
    }
}
