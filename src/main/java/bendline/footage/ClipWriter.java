package bendline.footage;

import bendline.image.VideoPlanes;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.jspecify.annotations.Nullable;

/**
 * Writes a silent MP4 that browsers and phones play: H.264, 4:2:0, index first, each frame at the time given, none dropped.
 * The same frames give the same bytes. Encodes on threads of its own, groups of pictures side by side where in haste; an encoder's
 * trouble may be told by a later call. To be called from one thread. The file is whole only after {@link #close()}.
 */
public final class ClipWriter implements AutoCloseable {

    private static final int CLOCK = 90_000;

    /** Groups being encoded at once by somebody in haste: two fill a small computer, more would take too much memory. */
    private static final int SIDE_BY_SIDE = 2;

    private final int width;
    private final int height;
    private final ClipWriterSettings settings;
    private final RateKeeper rate;
    private final FramePool frames;
    private final Deque<GroupTask> groups = new ArrayDeque<>();
    private final Mp4File file;
    private final byte[] header;
    private @Nullable ImageScaler scaler;
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
        this.frames = new FramePool(width, height);
        GroupTask first = newGroup();
        groups.add(first);
        this.header = first.encoder().header();
        try {
            this.file = new Mp4File(file, first.encoder().context(), settings);
        } catch (IOException e) {
            first.close();
            throw e;
        }
    }

    private GroupTask newGroup() throws IOException {
        int quantiser = rate.quantiser();
        return new GroupTask(new H264Group(width, height, settings, CLOCK, quantiser), frames, quantiser);
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
        ImageScaler toPlanes = scaler == null ? new ImageScaler(width, height) : scaler;
        scaler = toPlanes;
        add(frame -> toPlanes.fill(frame, image), seconds);
    }

    /**
     * Adds a frame that is in planes already.
     *
     * @param planes of the writer's size; copied
     * @param seconds clip time, later than the frame before by at least 1/90000 s
     * @throws IOException where the encoder or the disk refuses
     */
    public void write(VideoPlanes planes, double seconds) throws IOException {
        checkSize(planes.width(), planes.height());
        add(frame -> FramePool.fill(frame, planes), seconds);
    }

    private void checkSize(int imageWidth, int imageHeight) {
        if (imageWidth != width || imageHeight != height) {
            throw new IllegalArgumentException(
                    "the clip is " + width + "x" + height + ", the frame is " + imageWidth + "x" + imageHeight);
        }
    }

    private void add(Consumer<AVFrame> filling, double seconds) throws IOException {
        long tick = Math.round(seconds * CLOCK);
        if (tick <= lastTick) {
            throw new IllegalArgumentException(
                    "frame times must rise, got " + seconds + " s after " + (double) lastTick / CLOCK + " s");
        }
        try {
            if (groups.getLast().count() == settings.keyframeEvery()) {
                nextGroup();
            }
            AVFrame frame = frames.take();
            filling.accept(frame);
            frame.pts(tick);
            groups.getLast().add(frame);
            lastTick = tick;
        } catch (IOException e) {
            failed = true;
            throw e;
        }
    }

    /** How long a group took is always learnt from the same one, however fast each was, so that the bytes are the same. */
    private void nextGroup() throws IOException {
        groups.getLast().end();
        if (groups.size() == (settings.swift() ? SIDE_BY_SIDE : 1)) {
            GroupTask oldest = groups.getFirst();
            // Frames, not the time they are shown, so that a stretch with fewer or slower ones looks like the rest.
            rate.groupTook(oldest.quantiser(), store(oldest), oldest.count() / settings.nominalRate());
        }
        GroupTask next = newGroup();
        if (!next.encoder().continues(header)) {
            next.close();
            throw new IOException("the encoder changed its parameters between two groups of pictures");
        }
        groups.add(next);
    }

    /** Writes the oldest group to the file and lets go of it; returns its bits. */
    private double store(GroupTask oldest) throws IOException {
        double bits = 0;
        for (AVPacket packet : oldest.packets()) {
            bits += 8.0 * packet.size();
            // Only the last frame's length is taken from here; the others last until the next one.
            packet.duration(Math.round(CLOCK / settings.nominalRate()));
            file.write(packet, oldest.encoder().context().time_base());
        }
        groups.removeFirst().close();
        return bits;
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
            groups.forEach(GroupTask::close);
            frames.close();
            if (scaler != null) {
                scaler.close();
            }
        }
    }

    private void finish() throws IOException {
        try {
            groups.getLast().end();
            while (!groups.isEmpty()) {
                store(groups.getFirst());
            }
        } catch (IOException e) {
            file.free();
            throw e;
        }
        file.finish();
    }
}
