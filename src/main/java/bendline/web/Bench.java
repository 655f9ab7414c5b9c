package bendline.web;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Consumer;

/** This side of one {@link Workbench}: its process, what it is told and what it says. */
final class Bench implements AutoCloseable {

    /** Nothing said for so long: it hangs. */
    private static final long PATIENCE_MILLIS = 5 * 60_000;

    private final Process process;
    private final BufferedWriter to;
    private volatile long heardAt = System.currentTimeMillis();
    private volatile boolean busy = true;

    /**
     * Starts one.
     *
     * @param heard told the fields of each answer, at last the single field {@code end}
     */
    Bench(List<String> command, Consumer<String[]> heard) throws IOException {
        process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        to = new BufferedWriter(new OutputStreamWriter(process.getOutputStream(), StandardCharsets.UTF_8));
        Thread reader = new Thread(() -> listen(heard), "bench");
        reader.setDaemon(true);
        reader.start();
    }

    private void listen(Consumer<String[]> heard) {
        try (BufferedReader from =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = from.readLine(); line != null; line = from.readLine()) {
                if (line.startsWith(Workbench.SAYS)) {
                    heardAt = System.currentTimeMillis();
                    String[] fields = line.substring(Workbench.SAYS.length()).split("\t", -1);
                    busy = !(fields[0].equals("ready") || fields[0].equals("refused"));
                    heard.accept(fields);
                }
            }
        } catch (IOException e) {
            // Its pipe broke: the same as its end.
        } finally {
            process.destroyForcibly();
            heard.accept(new String[] {"end"});
        }
    }

    synchronized boolean tell(Order order) {
        try {
            busy = true;
            heardAt = System.currentTimeMillis();
            to.write(order.line() + "\n");
            to.flush();
            return process.isAlive();
        } catch (IOException e) {
            return false;
        }
    }

    boolean hangs() {
        return busy && System.currentTimeMillis() - heardAt > PATIENCE_MILLIS;
    }

    long idleMillis() {
        return busy ? 0 : System.currentTimeMillis() - heardAt;
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
