package bendline.footage;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/** A group of pictures on its way through an encoder and a thread of its own, its packets kept until it is whole. */
final class GroupTask implements AutoCloseable {

    private final H264Group encoder;
    private final FramePool frames;
    private final int quantiser;
    private final List<AVPacket> packets = new ArrayList<>();
    private final List<Future<?>> work = new ArrayList<>();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(task -> {
        Thread t = new Thread(task, "group of pictures");
        t.setDaemon(true);
        return t;
    });
    private int count;

    /** @param encoder closed by this */
    GroupTask(H264Group encoder, FramePool frames, int quantiser) {
        this.encoder = encoder;
        this.frames = frames;
        this.quantiser = quantiser;
    }

    H264Group encoder() {
        return encoder;
    }

    int quantiser() {
        return quantiser;
    }

    int count() {
        return count;
    }

    /** Adds a frame, which goes back to the pool when it is encoded, whatever happens. */
    void add(AVFrame frame) {
        count++;
        work.add(thread.submit(() -> {
            try {
                send(frame);
            } finally {
                frames.give(frame);
            }
            return null;
        }));
    }

    /** No more frames come. */
    void end() {
        work.add(thread.submit(() -> {
            send(null);
            return null;
        }));
        thread.shutdown();
    }

    /** The whole group's packets, after {@link #end}; waits for them. They are freed by {@link #close}. */
    List<AVPacket> packets() throws IOException {
        try {
            for (Future<?> w : work) {
                w.get();
            }
            return packets;
        } catch (ExecutionException e) {
            throw new IOException(e.getCause().getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("stopped while a clip was written", e);
        }
    }

    /** Hands a frame to the encoder, or its end where there is none, and takes what comes out. */
    private void send(@Nullable AVFrame frame) throws IOException {
        Native.check(avcodec.avcodec_send_frame(encoder.context(), frame), "encode a frame");
        while (true) {
            AVPacket packet = avcodec.av_packet_alloc();
            packets.add(packet);
            int code = avcodec.avcodec_receive_packet(encoder.context(), packet);
            if (code == Native.AGAIN || code == avutil.AVERROR_EOF()) {
                avcodec.av_packet_free(packets.remove(packets.size() - 1));
                return;
            }
            Native.check(code, "encode a frame");
        }
    }

    /** Lets go of encoder and packets, once the frame being encoded is done. */
    @Override
    public void close() {
        thread.shutdown();
        boolean interrupted = false;
        boolean done = false;
        while (!done) {
            try {
                done = thread.awaitTermination(1, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                // The encoder may not be closed under a frame; the wish to stop is passed on below.
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        packets.forEach(avcodec::av_packet_free);
        encoder.close();
    }
}
