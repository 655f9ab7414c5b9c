package bendline.footage;

import bendline.image.DisplayCurve;
import bendline.image.Luma;
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
    private byte[] lying = new byte[0];

    /** Upright grey: the frame's own luma plane, or a conversion where it has none or its size must change. */
    byte[] luma(AVFrame frame, UprightSize size) {
        AVPixFmtDescriptor format = avutil.av_pix_fmt_desc_get(frame.format());
        if (!size.fits(frame.width(), frame.height()) || interlaced(frame) || !hasPlane(format, 0)) {
            int stride = scaler.convert(frame, size, avutil.AV_PIX_FMT_GRAY8, size.squareWidth());
            return grey(scaler.buffer(), stride, size);
        }
        if (format.comp(0).depth() == 8) {
            return grey(frame.data(0), frame.linesize(0), size);
        }
        byte[] stored = plane(frame, format, 0, frame.width(), frame.height());
        return size.turn().apply(stored, frame.width(), frame.height(), 1);
    }

    /** Upright colour planes, or null where the clip does not hold them plainly at half the size. */
    @Nullable
    Tint tint(AVFrame frame, UprightSize size) {
        AVPixFmtDescriptor format = avutil.av_pix_fmt_desc_get(frame.format());
        boolean plain = size.fits(frame.width(), frame.height())
                && !interlaced(frame)
                && hasPlane(format, 0)
                && format.nb_components() >= 3
                && hasPlane(format, 1)
                && hasPlane(format, 2)
                && format.log2_chroma_w() == 1
                && format.log2_chroma_h() == 1
                && frame.width() % 2 == 0
                && frame.height() % 2 == 0;
        return plain ? new Tint(half(frame, format, size, 1), half(frame, format, size, 2)) : null;
    }

    private static Luma half(AVFrame frame, AVPixFmtDescriptor format, UprightSize size, int plane) {
        int width = frame.width() / 2;
        int height = frame.height() / 2;
        byte[] upright = size.turn().apply(plane(frame, format, plane, width, height), width, height, 1);
        return new Luma(size.width() / 2, size.height() / 2, upright);
    }

    /** Fills in upright blue, green, red bytes, as an ordinary screen shows them. */
    void bgr(AVFrame frame, UprightSize size, byte[] out) {
        DisplayCurve curve = curve(frame);
        if (curve == null) {
            int stride = scaler.convert(frame, size, avutil.AV_PIX_FMT_BGR24, 3 * size.squareWidth());
            if (size.turn().isNone()) {
                copy(scaler.buffer(), stride, 3 * size.squareWidth(), size.squareHeight(), out);
            } else {
                turner.copy(size.turn(), scaler.buffer(), stride, size.squareWidth(), size.squareHeight(), out);
            }
            return;
        }
        byte[] stored = size.turn().isNone() ? out : new byte[out.length];
        curve.toBgr(wide(frame, size), exposure, stored);
        if (stored != out) {
            byte[] turned = size.turn().apply(stored, size.squareWidth(), size.squareHeight(), 3);
            System.arraycopy(turned, 0, out, 0, out.length);
        }
    }

    private byte[] grey(BytePointer rows, int stride, UprightSize size) {
        int pixels = size.squareWidth() * size.squareHeight();
        if (size.turn().isNone()) {
            return copy(rows, stride, size.squareWidth(), size.squareHeight(), new byte[pixels]);
        }
        if (lying.length != pixels) {
            lying = new byte[pixels];
        }
        copy(rows, stride, size.squareWidth(), size.squareHeight(), lying);
        return size.turn().apply(lying, size.squareWidth(), size.squareHeight(), 1);
    }

    private static byte[] copy(BytePointer rows, int stride, int rowBytes, int height, byte[] out) {
        if (stride == rowBytes) {
            rows.get(out, 0, rowBytes * height);
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

    /** Whether a component has a plane of its own, one sample after the other. */
    private static boolean hasPlane(AVPixFmtDescriptor format, int component) {
        long unfit = avutil.AV_PIX_FMT_FLAG_RGB
                | avutil.AV_PIX_FMT_FLAG_PAL
                | avutil.AV_PIX_FMT_FLAG_BITSTREAM
                | avutil.AV_PIX_FMT_FLAG_HWACCEL
                | avutil.AV_PIX_FMT_FLAG_BE
                | avutil.AV_PIX_FMT_FLAG_FLOAT;
        int depth = format.comp(component).depth();
        return (format.flags() & unfit) == 0
                && format.comp(component).plane() == component
                && format.comp(component).offset() == 0
                && format.comp(component).step() == (depth > 8 ? 2 : 1)
                && depth >= 8
                && depth <= 16;
    }

    /** The eight highest bits of a plane. */
    private static byte[] plane(AVFrame frame, AVPixFmtDescriptor format, int plane, int width, int height) {
        byte[] out = new byte[width * height];
        int stride = frame.linesize(plane);
        int depth = format.comp(plane).depth();
        if (depth == 8) {
            BytePointer rows = frame.data(plane);
            for (int y = 0; y < height; y++) {
                rows.getPointer((long) y * stride).get(out, y * width, width);
            }
            return out;
        }
        short[] row = new short[width];
        ShortPointer samples = new ShortPointer(frame.data(plane));
        int shift = format.comp(plane).shift() + depth - 8;
        for (int y = 0; y < height; y++) {
            samples.position((long) y * stride / 2).get(row, 0, width);
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
