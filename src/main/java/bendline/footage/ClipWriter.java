package bendline.footage;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * Writes a silent MP4 that browsers and phones play: H.264, 4:2:0, index first, each frame at the time given. Not
 * thread-safe. The file is whole only after {@link #close()}.
 */
public final class ClipWriter implements AutoCloseable {

    private static final int CLOCK = 90_000;
    private static final int AGAIN = -11;

    private final Path file;
    private final int width;
    private final int height;
    private final ClipWriterSettings settings;
    private final AVFormatContext container;
    private final AVCodecContext codec;
    private final AVStream stream;
    private final AVFrame frame;
    private final AVPacket packet;
    private final SwsContext scaler;
    private final BytePointer source;
    private final PointerPointer<BytePointer> sourcePlanes = new PointerPointer<>(4);
    private final IntPointer sourceStrides = new IntPointer(4);
    private final BufferedImage scratch;
    private long lastTick = Long.MIN_VALUE;
    private boolean closed;

    /**
     * Opens the file and writes its header.
     *
     * @param width even, at least 16
     * @param height even, at least 16
     * @throws IOException where the file cannot be written
     */
    public ClipWriter(Path file, int width, int height, ClipWriterSettings settings) throws IOException {
        if (width < 16 || height < 16 || width % 2 != 0 || height % 2 != 0) {
            throw new IllegalArgumentException("sizes must be even and at least 16, got " + width + "x" + height);
        }
        NativeLog.quietUnlessChosen();
        this.file = file;
        this.width = width;
        this.height = height;
        this.settings = settings;
        this.container = new AVFormatContext(null);
        check(avformat.avformat_alloc_output_context2(container, null, "mp4", null), "prepare");
        this.codec = openCodec();
        this.stream = addStream();
        openFile();
        this.frame = pictureBuffer();
        this.packet = avcodec.av_packet_alloc();
        this.scaler = scaler();
        this.source = new BytePointer((long) width * height * 3 + 64);
        this.sourcePlanes.put(0, source);
        this.sourceStrides.put(0, width * 3);
        this.scratch = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
    }

    private AVCodecContext openCodec() throws IOException {
        AVCodec encoder = avcodec.avcodec_find_encoder_by_name("libopenh264");
        AVCodecContext c = avcodec.avcodec_alloc_context3(encoder);
        c.width(width).height(height).pix_fmt(avutil.AV_PIX_FMT_YUV420P);
        c.time_base(rational(1, CLOCK));
        c.framerate(rational((int) Math.round(settings.nominalRate() * 1000), 1000));
        c.bit_rate(settings.bitsPerSecond()).gop_size(settings.keyframeEvery()).max_b_frames(0);
        c.colorspace(avutil.AVCOL_SPC_BT709).color_primaries(avutil.AVCOL_PRI_BT709);
        c.color_trc(avutil.AVCOL_TRC_BT709).color_range(avutil.AVCOL_RANGE_MPEG);
        c.flags(c.flags() | avcodec.AV_CODEC_FLAG_GLOBAL_HEADER);
        c.thread_count(2);
        AVDictionary options = new AVDictionary(null);
        avutil.av_dict_set(options, "allow_skip_frames", "0", 0);
        avutil.av_dict_set(options, "rc_mode", "quality", 0);
        try {
            check(avcodec.avcodec_open2(c, encoder, options), "prepare the encoder for");
        } finally {
            avutil.av_dict_free(options);
        }
        return c;
    }

    private AVStream addStream() throws IOException {
        AVStream s = avformat.avformat_new_stream(container, null);
        s.time_base(rational(1, CLOCK));
        s.avg_frame_rate(codec.framerate());
        check(avcodec.avcodec_parameters_from_context(s.codecpar(), codec), "describe");
        if (settings.displayRotationDegrees() != 0) {
            tagRotation(s);
        }
        return s;
    }

    /** The nine numbers of a track's display matrix: 16.16 fixed point, the last column 2.30. */
    private void tagRotation(AVStream s) {
        int one = 1 << 16;
        int c = new int[] {one, 0, -one, 0}[settings.displayRotationDegrees() / 90];
        int n = new int[] {0, one, 0, -one}[settings.displayRotationDegrees() / 90];
        int x = (c < 0 ? width : n > 0 ? height : 0) * one;
        int y = (c < 0 ? height : n < 0 ? width : 0) * one;
        int[] matrix = {c, n, 0, -n, c, 0, x, y, 1 << 30};
        try (PointerPointer<AVPacketSideData> list = new PointerPointer<>(1);
                IntPointer count = new IntPointer(1)) {
            list.put(0, s.codecpar().coded_side_data());
            count.put(0, s.codecpar().nb_coded_side_data());
            AVPacketSideData data =
                    avcodec.av_packet_side_data_new(list, count, avcodec.AV_PKT_DATA_DISPLAYMATRIX, 36, 0);
            new IntPointer(data.data()).put(matrix, 0, 9);
            s.codecpar().coded_side_data(new AVPacketSideData(list.get(0)));
            s.codecpar().nb_coded_side_data(count.get(0));
        }
    }

    private void openFile() throws IOException {
        AVIOContext io = new AVIOContext(null);
        byte[] name = ("file:" + file.toAbsolutePath() + "\0").getBytes(StandardCharsets.UTF_8);
        AVDictionary options = new AVDictionary(null);
        try (BytePointer url = new BytePointer(name)) {
            PointerPointer<AVIOContext> slot = new PointerPointer<>(1);
            slot.put(0, io);
            check(avformat.avio_open2(slot, url, avformat.AVIO_FLAG_WRITE, null, (PointerPointer<?>) null), "open");
            container.pb(new AVIOContext(slot.get(0)));
            container.url(avutil.av_strdup(url));
            avutil.av_dict_set(options, "movflags", "+faststart", 0);
            check(avformat.avformat_write_header(container, options), "start");
        } finally {
            avutil.av_dict_free(options);
        }
    }

    private AVFrame pictureBuffer() throws IOException {
        AVFrame f = avutil.av_frame_alloc();
        f.format(avutil.AV_PIX_FMT_YUV420P).width(width).height(height);
        f.colorspace(avutil.AVCOL_SPC_BT709).color_range(avutil.AVCOL_RANGE_MPEG);
        check(avutil.av_frame_get_buffer(f, 0), "prepare");
        return f;
    }

    private SwsContext scaler() {
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

    /**
     * Adds a frame.
     *
     * @param image of the writer's size; kept upright as given, the tagged rotation is left to the player
     * @param seconds clip time, later than the frame before by at least 1/90000 s
     * @throws IOException where the encoder or the disk refuses
     */
    public void write(BufferedImage image, double seconds) throws IOException {
        if (image.getWidth() != width || image.getHeight() != height) {
            throw new IllegalArgumentException("the clip is " + width + "x" + height + ", the frame is "
                    + image.getWidth() + "x" + image.getHeight());
        }
        long tick = Math.round(seconds * CLOCK);
        if (tick <= lastTick) {
            throw new IllegalArgumentException(
                    "frame times must rise, got " + seconds + " s after " + (double) lastTick / CLOCK);
        }
        lastTick = tick;
        source.put(bgr(image), 0, width * height * 3);
        check(avutil.av_frame_make_writable(frame), "fill");
        swscale.sws_scale(scaler, sourcePlanes, sourceStrides, 0, height, frame.data(), frame.linesize());
        frame.pts(tick);
        check(avcodec.avcodec_send_frame(codec, frame), "encode");
        drain();
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

    private void drain() throws IOException {
        while (true) {
            int code = avcodec.avcodec_receive_packet(codec, packet);
            if (code == AGAIN || code == avutil.AVERROR_EOF()) {
                return;
            }
            check(code, "encode");
            packet.stream_index(stream.index());
            avcodec.av_packet_rescale_ts(packet, codec.time_base(), stream.time_base());
            check(avformat.av_interleaved_write_frame(container, packet), "write");
        }
    }

    private void check(int code, String verb) throws IOException {
        if (code < 0) {
            byte[] text = new byte[128];
            avutil.av_strerror(code, text, text.length);
            throw new IOException(
                    "could not " + verb + " " + file + ": " + new String(text, StandardCharsets.UTF_8).trim());
        }
    }

    private static AVRational rational(int num, int den) {
        return new AVRational().num(num).den(den);
    }

    /** Writes what is left and the index. */
    @Override
    public void close() throws IOException {
        if (closed) {
            return;
        }
        closed = true;
        try {
            check(avcodec.avcodec_send_frame(codec, null), "finish");
            drain();
            check(avformat.av_write_trailer(container), "finish");
        } finally {
            free();
        }
    }

    private void free() {
        avformat.avio_closep(container.pb());
        avformat.avformat_free_context(container);
        avcodec.avcodec_free_context(codec);
        avutil.av_frame_free(frame);
        avcodec.av_packet_free(packet);
        swscale.sws_freeContext(scaler);
        source.close();
        sourcePlanes.close();
        sourceStrides.close();
    }
}
