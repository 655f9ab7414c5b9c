package bendline.footage;

import bendline.image.VideoPlanes;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/**
 * Writes a silent MP4 that browsers and phones play: H.264, 4:2:0, index first, each frame at the time given, none dropped.
 * The same frames give the same bytes, but for those written in haste. Not thread-safe. The file is whole only after {@link #close()}.
 */
public final class ClipWriter implements AutoCloseable {

    private static final int CLOCK = 90_000;

    private final int width;
    private final int height;
    private final ClipWriterSettings settings;
    private final RateKeeper rate;
    private final Mp4File file;
    private final YuvFrame frame;
    private final AVPacket packet;
    private H264Group group;
    private int framesInGroup;
    private double bitsInGroup;
    private double groupStart;
    private long lastTick = Long.MIN_VALUE;
    private boolean failed;
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
        this.width = width;
        this.height = height;
        this.settings = settings;
        this.rate = new RateKeeper(settings.bitsPerSecond(), width * height * settings.nominalRate());
        this.group = newGroup();
        this.file = openFile(file, group, settings);
        this.frame = new YuvFrame(width, height);
        this.packet = avcodec.av_packet_alloc();
    }

    private H264Group newGroup() throws IOException {
        return new H264Group(width, height, settings, CLOCK, rate.quantiser());
    }

    private static Mp4File openFile(Path file, H264Group group, ClipWriterSettings settings) throws IOException {
        try {
            return new Mp4File(file, group.context(), settings);
        } catch (IOException e) {
            group.close();
            throw e;
        }
    }

    /**
     * Adds a frame.
     *
     * @param image of the writer's size; stored as given, the tagged rotation is left to the player
     * @param seconds clip time, later than the frame before by at least 1/90000 s
     * @throws IOException where the encoder or the disk refuses
     */
    public void write(BufferedImage image, double seconds) throws IOException {
        checkSize(image.getWidth(), image.getHeight());
        add(() -> frame.fill(image), seconds);
    }

    /**
     * Adds a frame that is in planes already.
     *
     * @param planes of the writer's size
     * @param seconds clip time, later than the frame before by at least 1/90000 s
     * @throws IOException where the encoder or the disk refuses
     */
    public void write(VideoPlanes planes, double seconds) throws IOException {
        checkSize(planes.width(), planes.height());
        add(() -> frame.fill(planes), seconds);
    }

    private void checkSize(int imageWidth, int imageHeight) {
        if (imageWidth != width || imageHeight != height) {
            throw new IllegalArgumentException(
                    "the clip is " + width + "x" + height + ", the frame is " + imageWidth + "x" + imageHeight);
        }
    }

    /** A frame that is filled when its turn has come. */
    private interface Filling {
        AVFrame frame() throws IOException;
    }

    private void add(Filling picture, double seconds) throws IOException {
        long tick = Math.round(seconds * CLOCK);
        if (tick <= lastTick) {
            throw new IllegalArgumentException(
                    "frame times must rise, got " + seconds + " s after " + (double) lastTick / CLOCK + " s");
        }
        try {
            if (framesInGroup == settings.keyframeEvery()) {
                nextGroup(seconds);
            } else if (framesInGroup == 0) {
                groupStart = seconds;
            }
            AVFrame filled = picture.frame();
            filled.pts(tick);
            send(filled);
            lastTick = tick;
            framesInGroup++;
        } catch (IOException e) {
            failed = true;
            throw e;
        }
    }

    private void nextGroup(double seconds) throws IOException {
        send(null);
        rate.groupTook(bitsInGroup, seconds - groupStart);
        H264Group next = newGroup();
        if (!next.continues(group)) {
            next.close();
            throw new IOException("the encoder changed its parameters between two groups of pictures");
        }
        group.close();
        group = next;
        framesInGroup = 0;
        bitsInGroup = 0;
        groupStart = seconds;
    }

    /** Hands a frame to the encoder, or its end where there is none, and writes what comes out. */
    private void send(@Nullable AVFrame filled) throws IOException {
        Native.check(avcodec.avcodec_send_frame(group.context(), filled), "encode a frame");
        while (true) {
            int code = avcodec.avcodec_receive_packet(group.context(), packet);
            if (code == Native.AGAIN || code == avutil.AVERROR_EOF()) {
                return;
            }
            Native.check(code, "encode a frame");
            bitsInGroup += 8.0 * packet.size();
            // Only the last frame's length is taken from here; the others last until the next one.
            packet.duration(Math.round(CLOCK / settings.nominalRate()));
            file.write(packet, group.context().time_base());
        }
    }

    /** Writes what is left and the index; after a failed write only lets go of the file. */
    @Override
    public void close() throws IOException {
        if (closed) {
            return;
        }
        closed = true;
        try {
            if (failed) {
                file.free();
            } else {
                finish();
            }
        } finally {
            group.close();
            frame.close();
            avcodec.av_packet_free(packet);
        }
    }

    private void finish() throws IOException {
        try {
            send(null);
        } catch (IOException e) {
            file.free();
            throw e;
        }
        file.finish();
    }
}
