package bendline.web;

import io.javalin.http.sse.SseClient;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/** Tells browsers that watch a clip how far it has come, whenever that has changed. */
final class Live implements AutoCloseable {

    private static final int MOST_WATCHERS = 200;

    private record Watcher(String clipId, int[] told) {}

    private final AnalysisQueue queue;
    private final Map<SseClient, Watcher> watchers = new ConcurrentHashMap<>();
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(r -> {
        Thread t = new Thread(r, "live");
        t.setDaemon(true);
        return t;
    });

    Live(AnalysisQueue queue) {
        this.queue = queue;
        clock.scheduleWithFixedDelay(this::tell, 200, 200, TimeUnit.MILLISECONDS);
    }

    void watch(SseClient client, String clipId) {
        if (watchers.size() >= MOST_WATCHERS) {
            client.sendEvent("full", "Too many pages are open; load this one again later.");
            return;
        }
        client.keepAlive();
        client.onClose(() -> watchers.remove(client));
        watchers.put(client, new Watcher(clipId, new int[1]));
    }

    private void tell() {
        watchers.forEach(this::tell);
    }

    private void tell(SseClient client, Watcher w) {
        try {
            Standing s = queue.standing(w.clipId());
            String text = text(s, queue.ahead(w.clipId()));
            if (text.hashCode() != w.told()[0]) {
                w.told()[0] = text.hashCode();
                client.sendEvent("standing", text);
            }
        } catch (RuntimeException e) {
            // One that can't be told must not keep the others from being told.
            watchers.remove(client);
        }
    }

    /** Fields in lines: state, version, fraction, how many are before it, words. */
    static String text(Standing s, int ahead) {
        return String.format(
                Locale.ROOT, "%s\t%d\t%.3f\t%d\t%s", s.state(), s.version(), s.fraction(), ahead, s.says());
    }

    @Override
    public void close() {
        clock.shutdownNow();
        watchers.keySet().forEach(SseClient::close);
    }
}
