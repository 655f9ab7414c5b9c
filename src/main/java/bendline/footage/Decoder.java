package bendline.footage;

import bendline.image.Turn;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVFrameSideData;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/**
 * The pictures of one file, decoded in the order they are shown. FFmpeg's own interfaces are used instead of the grabber
 * that wraps them, because the grabber hides decode errors, the mirror half of the display matrix and whether a track is
 * only a cover picture.
 */
final class Decoder implements AutoCloseable {

    /** A decoder that fails this often in a row gives nothing more. */
    private static final int MOST_FAILURES = 256;

    private final Container container;
    private final AVCodecContext codec;
    private final AVPacket packet;
    private final Damage damage = new Damage();
    private final int @Nullable [] hiddenEdges;
    private boolean draining;
    private int failures;

    Decoder(Path file, int threads) {
        this.container = Container.open(file);
        try {
            this.codec = openCodec(container, threads);
            this.hiddenEdges = container.hiddenEdges();
        } catch (RuntimeException e) {
            container.close();
            throw e;
        }
        this.packet = avcodec.av_packet_alloc();
    }

    private static AVCodecContext openCodec(Container container, int threads) {
        AVStream stream = container.stream();
        AVCodec decoder = avcodec.avcodec_find_decoder(stream.codecpar().codec_id());
        if (decoder == null || decoder.isNull()) {
            throw unknownCoding(container);
        }
        AVCodecContext context = avcodec.avcodec_alloc_context3(decoder);
        AVDictionary options = new AVDictionary(null);
        try {
            avcodec.avcodec_parameters_to_context(context, stream.codecpar());
            context.pkt_timebase(stream.time_base());
            context.thread_count(threads);
            avutil.av_dict_set(options, "max_pixels", Container.MAX_PIXELS, 0);
            avutil.av_dict_set(options, "codec_whitelist", Container.CODECS, 0);
            if (avcodec.avcodec_open2(context, decoder, options) < 0) {
                avcodec.avcodec_free_context(context);
                throw unknownCoding(container);
            }
            return context;
        } finally {
            avutil.av_dict_free(options);
        }
    }

    private static FootageException unknownCoding(Container container) {
        return new FootageException("The pictures in \"" + container.file()
                + "\" are coded in a way that is not read here; export the clip as H.264.");
    }

    /** The next frame in the order shown, to be freed by the caller, or null at the end of what can be read. */
    @Nullable
    AVFrame next() {
        AVFrame frame = avutil.av_frame_alloc();
        while (failures < MOST_FAILURES) {
            int code = avcodec.avcodec_receive_frame(codec, frame);
            if (code == 0) {
                failures = 0;
                crop(frame);
                damage.got(frame, stamp(frame));
                return frame;
            }
            if (code == avutil.AVERROR_EOF() || (draining && code == Native.AGAIN)) {
                avutil.av_frame_free(frame);
                return null;
            }
            if (code != Native.AGAIN) {
                failures++;
                damage.lostPiece();
            }
            feed();
        }
        damage.brokeOff();
        avutil.av_frame_free(frame);
        return null;
    }

    private void feed() {
        if (draining) {
            return;
        }
        int code = avformat.av_read_frame(container.context(), packet);
        if (code < 0) {
            if (code != avutil.AVERROR_EOF()) {
                damage.brokeOff();
            }
            draining = true;
            avcodec.avcodec_send_packet(codec, null);
            return;
        }
        if (packet.stream_index() == container.stream().index() && avcodec.avcodec_send_packet(codec, packet) < 0) {
            failures++;
            damage.lostPiece();
        }
        avcodec.av_packet_unref(packet);
    }

    private void crop(AVFrame frame) {
        if (hiddenEdges == null) {
            return;
        }
        frame.crop_top(frame.crop_top() + Math.max(0, hiddenEdges[0]));
        frame.crop_bottom(frame.crop_bottom() + Math.max(0, hiddenEdges[1]));
        frame.crop_left(frame.crop_left() + Math.max(0, hiddenEdges[2]));
        frame.crop_right(frame.crop_right() + Math.max(0, hiddenEdges[3]));
        if (avutil.av_frame_apply_cropping(frame, avutil.AV_FRAME_CROP_UNALIGNED) < 0) {
            // Edges that hide everything are nonsense; the whole picture is shown instead.
            frame.crop_top(0).crop_bottom(0).crop_left(0).crop_right(0);
        }
    }

    /** Presentation time in the container's own clock, seconds; NaN where the frame has none. */
    double stamp(AVFrame frame) {
        long own = frame.pts();
        long stamp = own == avutil.AV_NOPTS_VALUE ? frame.best_effort_timestamp() : own;
        return stamp == avutil.AV_NOPTS_VALUE
                ? Double.NaN
                : stamp * Container.ratio(container.stream().time_base());
    }

    /** How a stored picture must be turned to stand upright: the container's word, else the picture's own. */
    Turn turn(AVFrame frame) {
        Turn stored = container.turn();
        if (stored != null) {
            return stored;
        }
        AVFrameSideData data = avutil.av_frame_get_side_data(frame, avutil.AV_FRAME_DATA_DISPLAYMATRIX);
        return data == null || data.isNull() || data.size() < 36 ? Turn.NONE : Container.turnOf(data.data());
    }

    /** Width of a pixel over its height; 1 where nothing is said. */
    double pixelAspect(AVFrame frame) {
        double own = Container.ratio(frame.sample_aspect_ratio());
        double stated = Container.ratio(container.stream().sample_aspect_ratio());
        double aspect = own > 0 ? own : stated > 0 ? stated : 1;
        return aspect > 0.1 && aspect < 10 ? aspect : 1;
    }

    Container container() {
        return container;
    }

    Damage damage() {
        return damage;
    }

    @Override
    public void close() {
        avcodec.av_packet_free(packet);
        avcodec.avcodec_free_context(codec);
        container.close();
    }
}
