package bendline.report;

import bendline.footage.ClipWriter;
import bendline.image.VideoPlanes;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Encodes a frame while the next one is drawn: two canvases go round, and the writer has a thread of its own. */
final class BesideWriter implements AutoCloseable {

    private final ClipWriter writer;
    private final VideoPlanes[] canvases = new VideoPlanes[2];
    private final Deque<Future<?>> writing = new ArrayDeque<>();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread t = new Thread(work, "marked clip");
        t.setDaemon(true);
        return t;
    });
    private int next;

    /** @param writer used and closed by this only */
    BesideWriter(ClipWriter writer, int width, int height) {
        this.writer = writer;
        for (int i = 0; i < canvases.length; i++) {
            canvases[i] = VideoPlanes.black(width, height);
        }
    }

    /** A canvas to draw the next frame on; waits until the frame that was on it is written. */
    VideoPlanes canvas() throws IOException {
        while (writing.size() >= canvases.length) {
            await(writing.remove());
        }
        return canvases[next];
    }

    /** Writes what is on the canvas last handed out. */
    void write(double seconds) {
        VideoPlanes drawn = canvases[next];
        next = (next + 1) % canvases.length;
        writing.add(thread.submit(() -> {
            writer.write(drawn, seconds);
            return null;
        }));
    }

    private static void await(Future<?> work) throws IOException {
        try {
            work.get();
        } catch (ExecutionException e) {
            throw new IOException(
                    "a frame of the marked clip could not be written: "
                            + e.getCause().getMessage(),
                    e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("stopped while the marked clip was written", e);
        }
    }

    @Override
    public void close() throws IOException {
        try {
            while (!writing.isEmpty()) {
                await(writing.remove());
            }
        } finally {
            thread.shutdown();
            awaitEnd();
            writer.close();
        }
    }

    /** The native writer may not be closed under a frame that is still being written. */
    private void awaitEnd() {
        try {
            while (!thread.awaitTermination(1, java.util.concurrent.TimeUnit.SECONDS)) {
                // a frame takes less than that
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
