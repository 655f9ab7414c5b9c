package bendline.web;

import bendline.web.Served.Guest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/** Twenty clips of 50 MB at once from this computer into a server with 256 MB: how long, how much memory, and that the queue shows. */
final class ServeLoad {

    private static final int CLIPS = 20;
    private static final int BYTES = 50_000_000;
    private static final int CHUNK = 8 << 20;

    private ServeLoad() {}

    /** Prints one line; fails where a clip is lost. */
    public static void main(String[] args) throws Exception {
        Path book = Files.createTempDirectory("bendline-load");
        ExecutorService all = Executors.newFixedThreadPool(CLIPS);
        try (Served served = new Served(book)) {
            long from = System.nanoTime();
            List<Future<String>> sent = new ArrayList<>();
            for (int i = 0; i < CLIPS; i++) {
                int seed = i;
                sent.add(all.submit(() -> send(served.address, seed)));
            }
            List<String> ids = new ArrayList<>();
            for (Future<String> s : sent) {
                ids.add(s.get());
            }
            double seconds = (System.nanoTime() - from) / 1e9;
            String home = new Guest(served.address).get("/").body();
            long shown = ids.stream().filter(home::contains).count();
            System.out.printf(
                    Locale.ROOT,
                    "%d uploads of %d MB at once: %.1f s, most memory of the server %s, %d of %d in the list%n",
                    CLIPS,
                    BYTES / 1_000_000,
                    seconds,
                    peak(served.process.pid()),
                    shown,
                    CLIPS);
            if (shown != CLIPS) {
                throw new IOException("clips were lost");
            }
        } finally {
            all.shutdownNow();
            all.awaitTermination(10, TimeUnit.SECONDS);
            Workbench.delete(book);
        }
    }

    private static String send(String address, int seed) throws IOException, InterruptedException {
        Guest guest = new Guest(address);
        String at = guest.begin("clip" + seed + ".mp4", BYTES);
        Random random = new Random(seed);
        for (int offset = 0; offset < BYTES; offset += CHUNK) {
            byte[] part = new byte[Math.min(CHUNK, BYTES - offset)];
            random.nextBytes(part);
            if (guest.go(at, offset, part).statusCode() != 204) {
                throw new IOException("refused at " + offset);
            }
        }
        return guest.get("/arrived/" + at.substring(at.lastIndexOf('/') + 1)).body();
    }

    /** As Linux counts it; elsewhere not told. */
    private static String peak(long pid) throws IOException {
        Path status = Path.of("/proc/" + pid + "/status");
        if (!Files.isReadable(status)) {
            return "not told here";
        }
        return Files.readAllLines(status).stream()
                .filter(l -> l.startsWith("VmHWM"))
                .map(l -> l.replaceFirst("VmHWM:\\s*", ""))
                .findFirst()
                .orElse("not told here");
    }
}
