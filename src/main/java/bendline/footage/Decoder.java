package bendline.footage;

import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_DATA_DISPLAYMATRIX;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;

import bendline.image.Turn;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/**
 * One picture track of one local file, decoded in presentation order. FFmpeg's own interfaces are used instead of the
 * grabber that wraps them, because the grabber hides decode errors, the mirror half of the display matrix and whether a
 * track is only a cover picture.
 */
final class Decoder implements AutoCloseable {

    private static final String FORMATS = "mov,mp4,m4a,3gp,3g2,mj2,matroska,webm,mpegts,avi";
    private static final String MAX_PIXELS = "40000000";

    private final Path file;
    private final AVFormatContext container;
    private final AVStream stream;
    private final AVCodecContext codec;
    private final AVPacket packet;
    private final Turn turn;
    private boolean draining;
    private int damaged;
    private boolean brokenOff;
    private double lastSeconds;

    Decoder(Path file, int threads) {
        NativeLog.quietUnlessChosen();
        this.file = file;
        this.container = open(file);
        AVCodecContext opened = null;
        try {
            this.stream = pictureTrack(container, file);
            this.turn = storedTurn(stream);
            opened = openCodec(stream, threads, file);
        } catch (RuntimeException e) {
            avformat.avformat_close_input(container);
            throw e;
        }
        this.codec = opened;
        this.packet = avcodec.av_packet_alloc();
    }

    private static AVFormatContext open(Path file) {
        AVFormatContext context = new AVFormatContext(null);
        AVDictionary options = new AVDictionary(null);
        try (BytePointer name = Native.url(file)) {
            avutil.av_dict_set(options, "format_whitelist", FORMATS, 0);
            avutil.av_dict_set(options, "protocol_whitelist", "file", 0);
            int code = avformat.avformat_open_input(context, name, null, options);
            if (code < 0) {
                throw new FootageException(
                        "\"" + file.getFileName()
                                + "\" is not a film that can be read (it may be cut short or another kind"
                                + " of file); copy the clip from the phone again.",
                        new IllegalStateException(Native.text(code)));
            }
        } finally {
            avutil.av_dict_free(options);
        }
        if (avformat.avformat_find_stream_info(context, (PointerPointer<?>) null) < 0) {
            avformat.avformat_close_input(context);
            throw new FootageException(
                    "The tracks of \"" + file.getFileName() + "\" cannot be read; copy the clip from the phone again.");
        }
        return context;
    }

    private static AVStream pictureTrack(AVFormatContext context, Path file) {
        AVStream best = null;
        long bestPixels = 0;
        for (int i = 0; i < context.nb_streams(); i++) {
            AVStream s = context.streams(i);
            long pixels = (long) s.codecpar().width() * s.codecpar().height();
            boolean cover = (s.disposition() & avformat.AV_DISPOSITION_ATTACHED_PIC) != 0;
            if (s.codecpar().codec_type() == AVMEDIA_TYPE_VIDEO && !cover && pixels > bestPixels) {
                best = s;
                bestPixels = pixels;
            }
        }
        if (best == null) {
            throw new FootageException(
                    "\"" + file.getFileName() + "\" has no picture track; give a clip that shows the cast.");
        }
        for (int i = 0; i < context.nb_streams(); i++) {
            if (i != best.index()) {
                context.streams(i).discard(avcodec.AVDISCARD_ALL);
            }
        }
        return best;
    }

    private static AVCodecContext openCodec(AVStream stream, int threads, Path file) {
        AVCodec decoder = avcodec.avcodec_find_decoder(stream.codecpar().codec_id());
        if (decoder == null || decoder.isNull()) {
            throw new FootageException("The pictures in \"" + file.getFileName()
                    + "\" are coded in a way that is not known here; export" + " the clip as H.264.");
        }
        AVCodecContext context = avcodec.avcodec_alloc_context3(decoder);
        AVDictionary options = new AVDictionary(null);
        try {
            avcodec.avcodec_parameters_to_context(context, stream.codecpar());
            context.pkt_timebase(stream.time_base());
            context.thread_count(threads);
            avutil.av_dict_set(options, "max_pixels", MAX_PIXELS, 0);
            if (avcodec.avcodec_open2(context, decoder, options) < 0) {
                avcodec.avcodec_free_context(context);
                throw new FootageException(
                        "The pictures in \"" + file.getFileName() + "\" cannot be decoded; export the clip as H.264.");
            }
            return context;
        } finally {
            avutil.av_dict_free(options);
        }
    }

    private static Turn storedTurn(AVStream stream) {
        AVPacketSideData data = avcodec.av_packet_side_data_get(
                stream.codecpar().coded_side_data(), stream.codecpar().nb_coded_side_data(), AV_PKT_DATA_DISPLAYMATRIX);
        return data == null || data.isNull() ? Turn.NONE : turnOf(new IntPointer(data.data()));
    }

    private static Turn turnOf(IntPointer m) {
        return Turn.nearest(m.get(0), m.get(1), m.get(3), m.get(4));
    }

    /** The next frame in presentation order, to be freed by the caller, or null at the end of what can be read. */
    @Nullable
    AVFrame next() {
        AVFrame frame = avutil.av_frame_alloc();
        while (true) {
            int code = avcodec.avcodec_receive_frame(codec, frame);
            if (code == 0) {
                double stamp = stamp(frame);
                lastSeconds = Double.isNaN(stamp) ? lastSeconds : stamp;
                return frame;
            }
            if (code == AVERROR_EOF() || (draining && code == Native.AGAIN)) {
                avutil.av_frame_free(frame);
                return null;
            }
            if (code != Native.AGAIN) {
                damaged++;
            }
            feed();
        }
    }

    private void feed() {
        if (draining) {
            return;
        }
        int code = avformat.av_read_frame(container, packet);
        if (code < 0) {
            brokenOff |= code != AVERROR_EOF();
            draining = true;
            avcodec.avcodec_send_packet(codec, null);
            return;
        }
        if (packet.stream_index() == stream.index() && avcodec.avcodec_send_packet(codec, packet) < 0) {
            damaged++;
        }
        avcodec.av_packet_unref(packet);
    }

    /** Presentation time in the container's own clock, seconds; NaN where the frame has none. */
    double stamp(AVFrame frame) {
        long pts = frame.best_effort_timestamp();
        AVRational base = stream.time_base();
        return pts == AV_NOPTS_VALUE ? Double.NaN : (double) pts * base.num() / base.den();
    }

    /** How the stored picture must be turned to stand upright. */
    Turn turn() {
        return turn;
    }

    /** Width of a pixel over its height; 1 where nothing is said. */
    double pixelAspect(AVFrame frame) {
        double own = ratio(frame.sample_aspect_ratio());
        double stated = ratio(stream.sample_aspect_ratio());
        double aspect = own > 0 ? own : stated > 0 ? stated : 1;
        return aspect > 0.1 && aspect < 10 ? aspect : 1;
    }

    /** Seconds of one step as the container states it; 0 where unknown. */
    double nominalStep() {
        double rate = ratio(stream.avg_frame_rate());
        return rate > 0 ? 1 / rate : 0;
    }

    /** Length the container states, seconds; 0 where unknown. A hint for progress only. */
    double statedSeconds() {
        long us = container.duration();
        return us == AV_NOPTS_VALUE || us < 0 ? 0 : us / 1e6;
    }

    /** Capture rate that the phone wrote beside a slow-motion recording, frames per second; 0 where there is none. */
    double captureRate() {
        AVDictionaryEntry e = avutil.av_dict_get(container.metadata(), "com.android.capture.fps", null, 0);
        if (e == null || e.isNull()) {
            return 0;
        }
        try {
            return Double.parseDouble(e.value().getString().trim());
        } catch (NumberFormatException notANumber) {
            return 0;
        }
    }

    /** One sentence for each kind of damage met so far. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (damaged > 0) {
            notes.add(String.format(
                    Locale.ROOT, "%d piece%s of the clip could not be decoded.", damaged, damaged == 1 ? "" : "s"));
        }
        if (brokenOff) {
            notes.add(String.format(
                    Locale.ROOT, "Reading broke off at %.2f s because the file is damaged there.", lastSeconds));
        }
        return notes;
    }

    String fileName() {
        return String.valueOf(file.getFileName());
    }

    private static double ratio(AVRational r) {
        return r.den() == 0 ? 0 : (double) r.num() / r.den();
    }

    @Override
    public void close() {
        avcodec.av_packet_free(packet);
        avcodec.avcodec_free_context(codec);
        avformat.avformat_close_input(container);
    }
}
