package bendline.footage;

import bendline.image.DisplayCurve;
import bendline.image.Luma;
import bendline.image.Turn;
import bendline.image.VideoPlanes;
import java.nio.ByteBuffer;
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
    private final Spares spares = new Spares();
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
        return plane(frame, format, 0, size.turn());
    }

    /** Planes that were handed out and are needed no more: later ones are written over them. */
    void takeBack(Frame frame) {
        spares.give(frame.luma().pixels());
        Tint tint = frame.tint();
        if (tint != null) {
            spares.give(tint.blue().pixels());
            spares.give(tint.red().pixels());
        }
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

    /** Upright planes as stored, or null where they are not those of an ordinary screen in BT.709, limited range. */
    @Nullable
    VideoPlanes planes(AVFrame frame, UprightSize size) {
        boolean ordinary = curve(frame) == null
                && frame.color_range() != avutil.AVCOL_RANGE_JPEG
                && Scaler.matrixOf(frame) == avutil.AVCOL_SPC_BT709
                && avutil.av_pix_fmt_desc_get(frame.format()).comp(0).depth() == 8;
        Tint tint = ordinary ? tint(frame, size) : null;
        if (tint == null) {
            return null;
        }
        byte[] luma = luma(frame, size);
        return new VideoPlanes(
                size.width(),
                size.height(),
                luma,
                tint.blue().pixels(),
                tint.red().pixels());
    }

    /** Planes that were handed out and are needed no more. */
    void takeBack(VideoPlanes planes) {
        spares.give(planes.luma());
        spares.give(planes.blue());
        spares.give(planes.red());
    }

    private Luma half(AVFrame frame, AVPixFmtDescriptor format, UprightSize size, int plane) {
        return new Luma(size.width() / 2, size.height() / 2, plane(frame, format, plane, size.turn()));
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
        return grey(rows, stride, size.squareWidth(), size.squareHeight(), size.turn());
    }

    private byte[] grey(BytePointer rows, int stride, int width, int height, Turn turn) {
        byte[] out = spares.take(width * height);
        if (turn.isNone()) {
            return copy(rows, stride, width, height, out);
        }
        copy(rows, stride, width, height, lying(width * height));
        return turn.apply(lying, width, height, 1, out);
    }

    /** Room for a picture on its way to being turned. */
    private byte[] lying(int pixels) {
        if (lying.length < pixels) {
            lying = new byte[pixels];
        }
        return lying;
    }

    private static byte[] copy(BytePointer rows, int stride, int rowBytes, int height, byte[] out) {
        long last = (long) (height - 1) * stride;
        if (stride < 0 || last + rowBytes > Integer.MAX_VALUE) {
            for (int y = 0; y < height; y++) {
                rows.getPointer((long) y * stride).get(out, y * rowBytes, rowBytes);
            }
            return out;
        }
        // A buffer copies each row without a call into native code, which costs more than a short row.
        ByteBuffer bytes = rows.getPointer(0).capacity(last + rowBytes).asByteBuffer();
        if (stride == rowBytes) {
            bytes.get(0, out, 0, rowBytes * height);
            return out;
        }
        for (int y = 0; y < height; y++) {
            bytes.get(y * stride, out, y * rowBytes, rowBytes);
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

    /** The eight highest bits of a plane, upright. */
    private byte[] plane(AVFrame frame, AVPixFmtDescriptor format, int plane, Turn turn) {
        int width = plane == 0 ? frame.width() : frame.width() / 2;
        int height = plane == 0 ? frame.height() : frame.height() / 2;
        int stride = frame.linesize(plane);
        int depth = format.comp(plane).depth();
        if (depth == 8) {
            return grey(frame.data(plane), stride, width, height, turn);
        }
        byte[] out = spares.take(width * height);
        byte[] stored = turn.isNone() ? out : lying(width * height);
        short[] row = new short[width];
        ShortPointer samples = new ShortPointer(frame.data(plane));
        int shift = format.comp(plane).shift() + depth - 8;
        for (int y = 0; y < height; y++) {
            samples.position((long) y * stride / 2).get(row, 0, width);
            for (int x = 0, to = y * width; x < width; x++, to++) {
                stored[to] = (byte) ((row[x] & 0xffff) >> shift);
            }
        }
        return turn.isNone() ? out : turn.apply(stored, width, height, 1, out);
    }

    @Override
    public void close() {
        scaler.close();
        turner.close();
    }
}
