package bendline.footage;

import bendline.image.VideoPlanes;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/** A native 4:2:0 frame (BT.709, limited range) that is filled from Java images or planes. */
final class YuvFrame implements AutoCloseable {

    private final int width;
    private final int height;
    private final AVFrame frame;
    private final SwsContext scaler;
    private final BytePointer source;
    private final PointerPointer<BytePointer> planes = new PointerPointer<>(4);
    private final IntPointer strides = new IntPointer(4);
    private final BufferedImage scratch;

    YuvFrame(int width, int height) throws IOException {
        this.width = width;
        this.height = height;
        this.frame = avutil.av_frame_alloc();
        frame.format(avutil.AV_PIX_FMT_YUV420P).width(width).height(height);
        frame.colorspace(avutil.AVCOL_SPC_BT709).color_range(avutil.AVCOL_RANGE_MPEG);
        Native.check(avutil.av_frame_get_buffer(frame, 0), "take memory for a " + width + "x" + height + " frame");
        this.scaler = scaler(width, height);
        this.source = new BytePointer((long) width * height * 3 + 64);
        this.planes.put(0, source);
        this.strides.put(0, width * 3);
        this.scratch = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
    }

    private static SwsContext scaler(int width, int height) {
        SwsContext s = swscale.sws_getContext(
                width,
                height,
                avutil.AV_PIX_FMT_BGR24,
                width,
                height,
                avutil.AV_PIX_FMT_YUV420P,
                swscale.SWS_BICUBIC | swscale.SWS_ACCURATE_RND,
                null,
                null,
                (DoublePointer) null);
        IntPointer matrix = swscale.sws_getCoefficients(swscale.SWS_CS_ITU709);
        swscale.sws_setColorspaceDetails(s, matrix, 1, matrix, 0, 0, 1 << 16, 1 << 16);
        return s;
    }

    /** Fills the frame; the image has the frame's size. */
    AVFrame fill(BufferedImage image) throws IOException {
        source.put(bgr(image), 0, width * height * 3);
        Native.check(avutil.av_frame_make_writable(frame), "take memory for a frame");
        swscale.sws_scale(scaler, planes, strides, 0, height, frame.data(), frame.linesize());
        return frame;
    }

    /** Fills the frame with planes of its size. */
    AVFrame fill(VideoPlanes picture) throws IOException {
        Native.check(avutil.av_frame_make_writable(frame), "take memory for a frame");
        copy(picture.luma(), 0, width, height);
        copy(picture.blue(), 1, width / 2, height / 2);
        copy(picture.red(), 2, width / 2, height / 2);
        return frame;
    }

    private void copy(byte[] from, int plane, int columns, int rows) {
        int stride = frame.linesize(plane);
        ByteBuffer to =
                frame.data(plane).capacity((long) stride * (rows - 1) + columns).asByteBuffer();
        for (int y = 0; y < rows; y++) {
            to.put(y * stride, from, y * columns, columns);
        }
    }

    private byte[] bgr(BufferedImage image) {
        BufferedImage plain = image;
        boolean whole = image.getType() == BufferedImage.TYPE_3BYTE_BGR
                && ((DataBufferByte) image.getRaster().getDataBuffer()).getData().length == width * height * 3;
        if (!whole) {
            Graphics2D g = scratch.createGraphics();
            g.drawImage(image, 0, 0, null);
            g.dispose();
            plain = scratch;
        }
        return ((DataBufferByte) plain.getRaster().getDataBuffer()).getData();
    }

    @Override
    public void close() {
        avutil.av_frame_free(frame);
        swscale.sws_freeContext(scaler);
        source.close();
        planes.close();
        strides.close();
    }
}
