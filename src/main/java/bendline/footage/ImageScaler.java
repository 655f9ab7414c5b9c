package bendline.footage;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/** Turns Java images into native 4:2:0 frames (BT.709, limited range). */
final class ImageScaler implements AutoCloseable {

    private final int width;
    private final int height;
    private final SwsContext scaler;
    private final BytePointer source;
    private final PointerPointer<BytePointer> planes = new PointerPointer<>(4);
    private final IntPointer strides = new IntPointer(4);
    private final BufferedImage scratch;

    ImageScaler(int width, int height) {
        this.width = width;
        this.height = height;
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

    /** Fills a writable frame of the image's size. */
    void fill(AVFrame frame, BufferedImage image) {
        source.put(bgr(image), 0, width * height * 3);
        swscale.sws_scale(scaler, planes, strides, 0, height, frame.data(), frame.linesize());
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
        swscale.sws_freeContext(scaler);
        source.close();
        planes.close();
        strides.close();
    }
}
