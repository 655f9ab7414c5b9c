package bendline.footage;

import bendline.image.Turn;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/** An opened film file, its main picture track and what its header says. What the header says is a claim, not a fact. */
final class Container implements AutoCloseable {

    /** Readers that open other files or hosts (playlists, scripts) and still pictures are not among them. */
    private static final String FORMATS = "mov,mp4,m4a,3gp,3g2,mj2,matroska,webm,mpegts,avi";

    static final String CODECS = "h264,hevc,vp8,vp9,libvpx-vp8,libvpx-vp9,av1,libdav1d,libaom-av1,mpeg4,h263,h263p,"
            + "mjpeg,mpeg1video,mpeg2video,prores,dvvideo,msmpeg4,msmpeg4v2,wmv1,wmv2,wmv3,vc1";
    /** More than 8K; a tiny file that claims more is refused before memory is taken. */
    static final String MAX_PIXELS = "40000000";

    private static final Pattern TITLED_TURN = Pattern.compile("rot[a-z]*[^0-9]{0,3}(\\d{2,3})");

    private final Path file;
    private final AVFormatContext context;
    private final AVStream stream;

    private Container(Path file, AVFormatContext context, AVStream stream) {
        this.file = file;
        this.context = context;
        this.stream = stream;
    }

    static Container open(Path file) {
        NativeLog.quietUnlessChosen();
        FileKind.requireFilm(file);
        AVFormatContext context = openFile(file);
        try {
            findTracks(context, file);
            return new Container(file, context, pictureTrack(context, file));
        } catch (RuntimeException e) {
            avformat.avformat_close_input(context);
            throw e;
        }
    }

    private static AVFormatContext openFile(Path file) {
        AVFormatContext context = new AVFormatContext(null);
        AVDictionary options = new AVDictionary(null);
        try (BytePointer name = Native.url(file)) {
            avutil.av_dict_set(options, "format_whitelist", FORMATS, 0);
            avutil.av_dict_set(options, "protocol_whitelist", "file", 0);
            avutil.av_dict_set(options, "codec_whitelist", CODECS, 0);
            int code = avformat.avformat_open_input(context, name, null, options);
            if (code < 0) {
                throw new FootageException(
                        "\"" + file + "\" is damaged or not a film in a form read here (MP4, MOV, 3GP, MKV, WebM,"
                                + " MPEG-TS, AVI); copy the clip from the phone again.",
                        new IllegalStateException(Native.text(code)));
            }
        } finally {
            avutil.av_dict_free(options);
        }
        return context;
    }

    /** Probing decodes too, so every decoder it may open gets the same limit as the real one. */
    private static void findTracks(AVFormatContext context, Path file) {
        int tracks = context.nb_streams();
        try (PointerPointer<AVDictionary> limits = new PointerPointer<>(Math.max(1, tracks))) {
            for (int i = 0; i < tracks; i++) {
                AVDictionary limit = new AVDictionary(null);
                avutil.av_dict_set(limit, "max_pixels", MAX_PIXELS, 0);
                limits.put(i, limit);
            }
            int code = avformat.avformat_find_stream_info(context, limits);
            for (int i = 0; i < tracks; i++) {
                Pointer left = limits.get(i);
                if (left != null && !left.isNull()) {
                    avutil.av_dict_free(new AVDictionary(left));
                }
            }
            if (code < 0) {
                throw new FootageException(
                        "The tracks of \"" + file + "\" cannot be read; copy the clip from the phone again.",
                        new IllegalStateException(Native.text(code)));
            }
        }
    }

    /** A track that moves beats one that holds a single picture, then more pixels beat fewer. */
    private static AVStream pictureTrack(AVFormatContext context, Path file) {
        AVStream best = null;
        double bestScore = -1;
        for (int i = 0; i < context.nb_streams(); i++) {
            AVStream s = context.streams(i);
            boolean cover = (s.disposition() & avformat.AV_DISPOSITION_ATTACHED_PIC) != 0;
            double score = score(s);
            if (s.codecpar().codec_type() == avutil.AVMEDIA_TYPE_VIDEO && !cover && score > bestScore) {
                best = s;
                bestScore = score;
            }
        }
        if (best == null) {
            throw new FootageException("\"" + file + "\" has no picture track; give a clip that shows the cast.");
        }
        for (int i = 0; i < context.nb_streams(); i++) {
            if (i != best.index()) {
                context.streams(i).discard(avcodec.AVDISCARD_ALL);
            }
        }
        return best;
    }

    private static double score(AVStream s) {
        double pixels = (double) s.codecpar().width() * s.codecpar().height();
        boolean still = s.nb_frames() == 1 || (s.nb_frames() == 0 && s.duration() == 0);
        return still ? pixels / 1e12 : pixels;
    }

    AVFormatContext context() {
        return context;
    }

    AVStream stream() {
        return stream;
    }

    Path file() {
        return file;
    }

    /** The turn in the track's display matrix; null where there is none. */
    @Nullable
    Turn turn() {
        AVPacketSideData data = sideData(avcodec.AV_PKT_DATA_DISPLAYMATRIX);
        return data == null || data.size() < 36 ? null : turnOf(data.data());
    }

    /** Reads the linear part of a display matrix. */
    static Turn turnOf(BytePointer matrix) {
        IntPointer m = new IntPointer(matrix);
        return Turn.nearest(m.get(0), m.get(1), m.get(3), m.get(4));
    }

    /** Rows and columns to hide at the top, bottom, left and right: the clean aperture; null where all is shown. */
    int @Nullable [] hiddenEdges() {
        AVPacketSideData data = sideData(avcodec.AV_PKT_DATA_FRAME_CROPPING);
        if (data == null || data.size() < 16) {
            return null;
        }
        int[] edges = new int[4];
        new IntPointer(data.data()).get(edges);
        return edges;
    }

    private @Nullable AVPacketSideData sideData(int kind) {
        AVPacketSideData data = avcodec.av_packet_side_data_get(
                stream.codecpar().coded_side_data(), stream.codecpar().nb_coded_side_data(), kind);
        return data == null || data.isNull() ? null : data;
    }

    /** A turn that stands only in the track's title, degrees; 0 where there is none. No player applies it. */
    int titledTurn() {
        String title = tag(stream.metadata(), "title").toLowerCase(Locale.ROOT);
        Matcher m = TITLED_TURN.matcher(title);
        return m.find() ? Integer.parseInt(m.group(1)) % 360 : 0;
    }

    /** Capture rate that the phone wrote beside a slow-motion recording, frames per second; 0 where there is none. */
    double captureRate() {
        try {
            double rate = Double.parseDouble(
                    tag(context.metadata(), "com.android.capture.fps").trim());
            return rate >= 1 && rate <= 100_000 ? rate : 0;
        } catch (NumberFormatException notANumber) {
            return 0;
        }
    }

    private static String tag(AVDictionary tags, String key) {
        AVDictionaryEntry e = avutil.av_dict_get(tags, key, null, 0);
        return e == null || e.isNull() ? "" : e.value().getString();
    }

    /** Seconds of one step as the header states it; 0 where unknown. */
    double nominalStep() {
        double rate = ratio(stream.avg_frame_rate());
        return rate > 0 ? 1 / rate : 0;
    }

    /** Length the header states for the pictures, seconds; 0 where unknown. */
    double statedSeconds() {
        if (stream.duration() > 0) {
            return stream.duration() * ratio(stream.time_base());
        }
        return Math.max(0, context.duration() / (double) avutil.AV_TIME_BASE);
    }

    /** Pictures the header counts; 0 where it does not. */
    long statedFrames() {
        return stream.nb_frames();
    }

    /** How many pictures there should be, counted by the header or by its length; 0 where it tells neither. */
    int expectedFrames() {
        double counted = statedFrames() > 0 ? statedFrames() : nominalStep() > 0 ? statedSeconds() / nominalStep() : 0;
        return (int) Math.min(counted, Integer.MAX_VALUE);
    }

    static double ratio(AVRational r) {
        return r.den() == 0 ? 0 : (double) r.num() / r.den();
    }

    @Override
    public void close() {
        avformat.avformat_close_input(context);
    }
}
