package bendline.footage;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.PointerPointer;

/**
 * How fast a clip is decoded to grey frames on the heap against FFmpeg's own decoding of it, which keeps nothing: the same
 * library and number of threads, turn by turn in one process.
 *
 * @param frames of the clip
 * @param plainSeconds FFmpeg's own, median of the rounds
 * @param greySeconds ours
 */
public record DecodeSpeed(int frames, double plainSeconds, double greySeconds) {

    private static final int THREADS = 2;
    private static final int ROUNDS = 7;

    /** Measures; the first round of each warms up and does not count. */
    public static DecodeSpeed of(Path clip) {
        NativeLog.quiet();
        double[] plain = new double[ROUNDS];
        double[] grey = new double[ROUNDS];
        Footage footage = Footage.open(clip);
        int frames = plain(clip);
        if (frames != grey(footage)) {
            throw new IllegalStateException("the two ways find different numbers of frames in " + clip);
        }
        for (int i = 0; i < ROUNDS; i++) {
            long start = System.nanoTime();
            plain(clip);
            long middle = System.nanoTime();
            grey(footage);
            plain[i] = (middle - start) / 1e9;
            grey[i] = (System.nanoTime() - middle) / 1e9;
        }
        Arrays.sort(plain);
        Arrays.sort(grey);
        return new DecodeSpeed(frames, plain[ROUNDS / 2], grey[ROUNDS / 2]);
    }

    /** Our speed over FFmpeg's. */
    public double ratio() {
        return plainSeconds / greySeconds;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d frames: FFmpeg alone %.2f s, grey frames on the heap %.2f s, speed ratio %.2f (target ≥ 0.9)",
                frames,
                plainSeconds,
                greySeconds,
                ratio());
    }

    /** Prints it for each clip named. */
    public static void main(String[] clips) {
        for (String clip : clips) {
            System.out.println(Path.of(clip).getFileName() + ", " + of(Path.of(clip)));
        }
    }

    private static int grey(Footage footage) {
        int n = 0;
        try (LumaReader reader = footage.lumas()) {
            for (Frame frame = reader.next(); frame != null; frame = reader.next()) {
                n++;
                reader.giveBack(frame);
            }
        }
        return n;
    }

    private static int plain(Path clip) {
        AVFormatContext context = new AVFormatContext(null);
        avformat.avformat_open_input(context, clip.toString(), null, (AVDictionary) null);
        avformat.avformat_find_stream_info(context, (PointerPointer<?>) null);
        int track = avformat.av_find_best_stream(context, avutil.AVMEDIA_TYPE_VIDEO, -1, -1, (AVCodec) null, 0);
        AVCodec decoder =
                avcodec.avcodec_find_decoder(context.streams(track).codecpar().codec_id());
        AVCodecContext codec = avcodec.avcodec_alloc_context3(decoder);
        avcodec.avcodec_parameters_to_context(codec, context.streams(track).codecpar());
        codec.thread_count(THREADS);
        avcodec.avcodec_open2(codec, decoder, (AVDictionary) null);
        AVPacket packet = avcodec.av_packet_alloc();
        AVFrame frame = avutil.av_frame_alloc();
        int n = 0;
        while (avformat.av_read_frame(context, packet) >= 0) {
            if (packet.stream_index() == track) {
                avcodec.avcodec_send_packet(codec, packet);
                n += drain(codec, frame);
            }
            avcodec.av_packet_unref(packet);
        }
        avcodec.avcodec_send_packet(codec, null);
        n += drain(codec, frame);
        avutil.av_frame_free(frame);
        avcodec.av_packet_free(packet);
        avcodec.avcodec_free_context(codec);
        avformat.avformat_close_input(context);
        return n;
    }

    private static int drain(AVCodecContext codec, AVFrame frame) {
        int n = 0;
        while (avcodec.avcodec_receive_frame(codec, frame) >= 0) {
            n++;
        }
        return n;
    }
}
