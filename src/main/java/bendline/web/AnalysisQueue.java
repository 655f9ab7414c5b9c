package bendline.web;

import bendline.book.Arrivals;
import bendline.book.Clip;
import bendline.book.Job;
import bendline.book.PracticeBook;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;

/**
 * What waits to be analysed, what is being analysed, and the few clips that are kept open for corrections. What waits is in
 * the book, so a new start goes on with it.
 */
final class AnalysisQueue implements AutoCloseable {

    private static final int TRIES = 3;
    private static final int KEPT_OPEN = 2;
    private static final long IDLE_MILLIS = 10 * 60_000;
    /** Room that one report and its pictures take at most, about. */
    private static final long NEEDED_BYTES = 200_000_000;

    private static final long ASK_AGAIN_MILLIS = 1000;

    private final ServeSettings settings;
    private final PracticeBook book;
    private final Arrivals arrivals;
    private final Desk desk;
    private final Room room;
    private final LinkedBlockingQueue<String> waiting = new LinkedBlockingQueue<>();
    private final Map<String, Standing> standings = new ConcurrentHashMap<>();
    /** In the order in which they were last used. */
    private final Map<String, Bench> open = new LinkedHashMap<>(8, 0.75f, true);

    private final List<Thread> threads = new ArrayList<>();

    AnalysisQueue(ServeSettings settings, PracticeBook book, Desk desk, Room room) {
        this.settings = settings;
        this.book = book;
        this.arrivals = new Arrivals(book);
        this.desk = desk;
        this.room = room;
    }

    void start() {
        for (Job job : arrivals.jobs()) {
            if (job.state().equals("waiting")) {
                enqueue(job.clipId());
            }
        }
        for (int i = 0; i < Math.max(1, Runtime.getRuntime().availableProcessors() / 2); i++) {
            thread(this::work);
        }
        thread(this::tidy);
    }

    private void thread(Runnable work) {
        Thread t = new Thread(work, "analysis");
        t.setDaemon(true);
        t.start();
        threads.add(t);
    }

    /** Asks for a clip to be analysed. */
    void ask(String clipId) {
        arrivals.ask(clipId);
        enqueue(clipId);
    }

    private synchronized void enqueue(String clipId) {
        Standing now = standings.get(clipId);
        if (now != null && now.busy()) {
            return;
        }
        standings.put(clipId, new Standing("waiting", "", 0, version(clipId) + 1));
        waiting.add(clipId);
    }

    private int version(String clipId) {
        Standing s = standings.get(clipId);
        return s == null ? 0 : s.version();
    }

    /** Lets what was corrected be followed anew: at once where the clip is kept open, else from the beginning. */
    void corrected(Clip clip) {
        Bench bench;
        synchronized (this) {
            bench = open.get(clip.id());
            Standing now = standings.get(clip.id());
            if (bench != null && now != null && !now.busy()) {
                standings.put(clip.id(), now.with("following", "Following the rod from the marks", 0));
            }
        }
        if (bench == null || !bench.tell(desk.order(clip))) {
            ask(clip.id());
        }
    }

    /** How far a clip has come. */
    Standing standing(String clipId) {
        Standing s = standings.get(clipId);
        if (s != null) {
            return s;
        }
        Standing kept = arrivals.job(clipId)
                .map(j -> new Standing(j.state(), j.says(), 1, 0))
                .orElseGet(() -> new Standing(desk.analysed(clipId) ? "done" : "new", "", 0, 0));
        Standing meanwhile = standings.putIfAbsent(clipId, kept);
        return meanwhile == null ? kept : meanwhile;
    }

    /** How many are before a clip. */
    int ahead(String clipId) {
        return List.copyOf(waiting).indexOf(clipId);
    }

    private void work() {
        try {
            while (!Thread.currentThread().isInterrupted()) {
                String clipId = waiting.take();
                waitForRoom(clipId);
                try {
                    analyse(clipId);
                } catch (IOException | RuntimeException e) {
                    fail(clipId, "The analysis could not be begun (" + e.getMessage() + "); try again.");
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** A report that finds no room half way is lost work: told, and begun when there is room. */
    private void waitForRoom(String clipId) throws InterruptedException {
        while (!room.holds(NEEDED_BYTES)) {
            String says = "The disk is nearly full: " + Room.words(room.freeBytes())
                    + " are left. Make room; the analysis begins by itself then";
            standings.computeIfPresent(clipId, (k, s) -> s.with("waiting", says, 0));
            Thread.sleep(ASK_AGAIN_MILLIS);
        }
    }

    private void analyse(String clipId) throws IOException, InterruptedException {
        Clip clip = desk.clip(clipId).orElse(null);
        if (clip == null || !book.has(clip)) {
            fail(clipId, "The clip is not where the book put it; book check --look-in FOLDER finds it again.");
            return;
        }
        if (arrivals.job(clipId).map(Job::tries).orElse(0) >= TRIES) {
            fail(clipId, "The analysis ended without a word " + TRIES + " times; send the clip in another format.");
            return;
        }
        arrivals.tried(clipId);
        closeAt(clipId);
        makeRoom(KEPT_OPEN - 1);
        CountDownLatch over = new CountDownLatch(1);
        Bench[] it = new Bench[1];
        it[0] = new Bench(settings.workbench(), fields -> heard(clip, fields, over));
        synchronized (this) {
            open.put(clipId, it[0]);
        }
        it[0].tell(desk.order(clip));
        over.await();
    }

    private void heard(Clip clip, String[] f, CountDownLatch over) {
        String id = clip.id();
        switch (f[0]) {
            case "at" ->
                standings.computeIfPresent(
                        id,
                        (k, s) ->
                                s.state().equals("following") ? s : s.with("working", f[2], Double.parseDouble(f[1])));
            case "followed" ->
                standings.computeIfPresent(
                        id, (k, s) -> new Standing(s.state(), s.says(), s.fraction(), s.version() + 1));
            case "written" -> desk.written(clip, f[1], Integer.parseInt(f[2]), settings.program());
            case "refused" -> standings.computeIfPresent(id, (k, s) -> s.with("done", f[1], 1));
            case "ready" -> {
                tidyPictures();
                arrivals.ended(id, true, "");
                standings.computeIfPresent(id, (k, s) -> s.with("done", "", 1));
                over.countDown();
            }
            case "failed" -> fail(id, f[1]);
            default -> ended(id, over);
        }
    }

    private void ended(String clipId, CountDownLatch over) {
        synchronized (this) {
            open.remove(clipId);
        }
        Standing s = standings.get(clipId);
        if (over.getCount() > 0 && s != null && s.busy()) {
            standings.put(clipId, s.with("waiting", "The analysis broke off and is begun again", 0));
            waiting.add(clipId);
        } else if (s != null && s.state().equals("following")) {
            ask(clipId);
        }
        over.countDown();
    }

    private void fail(String clipId, String says) {
        arrivals.ended(clipId, false, says);
        standings.put(clipId, new Standing("failed", says, 1, version(clipId)));
    }

    private void closeAt(String clipId) {
        Bench there;
        synchronized (this) {
            there = open.remove(clipId);
        }
        if (there != null) {
            there.close();
        }
    }

    /** Closes those that nobody used for longest. */
    private synchronized void makeRoom(int most) {
        List<String> idle = open.entrySet().stream()
                .filter(e -> e.getValue().idleMillis() > 0)
                .map(Map.Entry::getKey)
                .toList();
        for (int i = 0; i < idle.size() && open.size() > most; i++) {
            open.get(idle.get(i)).close();
            open.remove(idle.get(i));
        }
    }

    private void tidyPictures() {
        try {
            desk.frames().tidy();
        } catch (IOException e) {
            // What can't be taken away now is too much next time, too.
            return;
        }
    }

    private void tidy() {
        try {
            while (true) {
                Thread.sleep(10_000);
                synchronized (this) {
                    open.values().stream()
                            .filter(b -> b.hangs() || b.idleMillis() > IDLE_MILLIS)
                            .forEach(Bench::close);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        threads.forEach(Thread::interrupt);
        synchronized (this) {
            open.values().forEach(Bench::close);
        }
    }
}
