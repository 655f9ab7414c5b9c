package bendline.footage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/** An MP4 with one picture track, its index in front, its display matrix and capture rate as phones write them. */
final class Mp4File {

    private static final String CAPTURE_KEY = "com.android.capture.fps";
    /** Stands where the four bytes of the capture rate go; the muxer can only write text. */
    private static final String CAPTURE_PLACE = "RATE";

    private static final int MDTA_FLOAT32 = 23;

    private final Path file;
    private final ClipWriterSettings settings;
    private final AVFormatContext container;
    private final AVStream stream;

    Mp4File(Path file, AVCodecContext codec, ClipWriterSettings settings) throws IOException {
        this.file = file;
        this.settings = settings;
        this.container = new AVFormatContext(null);
        Native.check(avformat.avformat_alloc_output_context2(container, null, "mp4", null), "prepare " + file);
        try {
            container.flags(container.flags() | AVFormatContext.AVFMT_FLAG_BITEXACT);
            stream = addStream(codec);
            writeHeader();
        } catch (IOException e) {
            free();
            throw e;
        }
    }

    private AVStream addStream(AVCodecContext codec) throws IOException {
        AVStream s = avformat.avformat_new_stream(container, null);
        s.time_base(codec.time_base());
        s.avg_frame_rate(codec.framerate());
        Native.check(avcodec.avcodec_parameters_from_context(s.codecpar(), codec), "describe " + file);
        if (settings.displayRotationDegrees() != 0) {
            tagRotation(s, codec.width(), codec.height());
        }
        return s;
    }

    /** The nine numbers of a track's display matrix: 16.16 fixed point, the last column 2.30. */
    private void tagRotation(AVStream s, int width, int height) {
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

    private void writeHeader() throws IOException {
        AVDictionary options = new AVDictionary(null);
        try (BytePointer url = Native.url(file);
                PointerPointer<AVIOContext> slot = new PointerPointer<>(1)) {
            slot.put(0, null);
            Native.check(
                    avformat.avio_open2(slot, url, avformat.AVIO_FLAG_WRITE, null, (PointerPointer<?>) null),
                    "write " + file);
            container.pb(new AVIOContext(slot.get(0)));
            container.url(avutil.av_strdup(url));
            avutil.av_dict_set(options, "movflags", "+faststart+use_metadata_tags", 0);
            if (settings.captureRate() > 0) {
                AVDictionary tags = new AVDictionary(null);
                avutil.av_dict_set(tags, CAPTURE_KEY, CAPTURE_PLACE, 0);
                container.metadata(tags);
            }
            Native.check(avformat.avformat_write_header(container, options), "start " + file);
        } finally {
            avutil.av_dict_free(options);
        }
    }

    /** Takes a packet whose times are in the given base. */
    void write(AVPacket packet, AVRational base) throws IOException {
        packet.stream_index(stream.index());
        avcodec.av_packet_rescale_ts(packet, base, stream.time_base());
        Native.check(avformat.av_interleaved_write_frame(container, packet), "write " + file);
    }

    /** Writes the index and closes the file. */
    void finish() throws IOException {
        try {
            Native.check(avformat.av_write_trailer(container), "finish " + file);
        } finally {
            free();
        }
        if (settings.captureRate() > 0) {
            writeCaptureRate();
        }
    }

    /** Lets go of the file without an index. */
    void free() {
        if (container.pb() != null && !container.pb().isNull()) {
            avformat.avio_closep(container.pb());
            container.pb(null);
        }
        avformat.avformat_free_context(container);
    }

    private void writeCaptureRate() throws IOException {
        byte[] place = ("data\0\0\0\1\0\0\0\0" + CAPTURE_PLACE).getBytes(StandardCharsets.ISO_8859_1);
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
            ByteBuffer head = ByteBuffer.allocate(8).order(ByteOrder.BIG_ENDIAN);
            for (long at = 0; at + 8 <= channel.size(); at += Integer.toUnsignedLong(head.getInt(0))) {
                channel.read(head.clear(), at);
                if (head.getInt(4) == 0x6d6f6f76) {
                    patch(channel, at, head.getInt(0), place);
                    return;
                }
            }
        }
        throw new IOException("could not tag the capture rate in " + file + ": it has no index");
    }

    private void patch(FileChannel channel, long at, int size, byte[] place) throws IOException {
        ByteBuffer moov = ByteBuffer.allocate(size).order(ByteOrder.BIG_ENDIAN);
        channel.read(moov, at);
        for (int i = 0; i + place.length <= size; i++) {
            if (Arrays.equals(moov.array(), i, i + place.length, place, 0, place.length)) {
                ByteBuffer value = ByteBuffer.allocate(12).order(ByteOrder.BIG_ENDIAN);
                value.putInt(MDTA_FLOAT32)
                        .putInt(0)
                        .putFloat((float) settings.captureRate())
                        .flip();
                channel.write(value, at + i + 4);
                return;
            }
        }
        throw new IOException("could not tag the capture rate in " + file + ": its place was not written");
    }
}
