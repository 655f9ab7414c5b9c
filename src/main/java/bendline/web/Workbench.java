package bendline.web;

import bendline.analysis.Analyser;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.ClipSession;
import bendline.analysis.Progress;
import bendline.analysis.SetupException;
import bendline.footage.Footage;
import bendline.footage.FootageException;
import bendline.footage.FramePictures;
import bendline.report.CastFolder;
import bendline.report.FollowedJson;
import bendline.report.ReportOptions;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.Stream;

/**
 * The side that opens clips: one process, one clip. It is told what to do in lines and answers in lines, fields parted by
 * tabs; whatever a hostile file does, it does it here. It ends when its input ends.
 */
public final class Workbench {

    /** Begins every line that is an answer: native libraries may print, too. */
    static final String SAYS = "bendline\t";

    private static final int LONGEST_PX = 1600;
    /** Clips of more frames are shown only around their casts. */
    private static final int MOST_FRAMES = 1500;

    private static final int QUIET_MILLIS = 2000;

    private final BufferedReader in;
    private final PrintWriter out;
    private final ReportOptions look;

    private Workbench(BufferedReader in, PrintWriter out, ReportOptions look) {
        this.in = in;
        this.out = out;
        this.look = look;
    }

    /**
     * Works until the input ends, or the program that started it.
     *
     * @param look how reports are written
     */
    public static void run(BufferedReader in, PrintWriter out, ReportOptions look) throws IOException {
        ProcessHandle.current()
                .parent()
                .ifPresent(p -> p.onExit().thenRun(() -> Runtime.getRuntime().halt(1)));
        new Workbench(in, out, look).work();
    }

    private void work() throws IOException {
        String first = in.readLine();
        if (first == null) {
            return;
        }
        Order order = Order.parse(first);
        try (ClipSession session = new Analyser().open(Footage.open(order.clip()), order.known(), progress())) {
            followed(session.analysis(), order.followed());
            write(session.analysis(), order);
            pictures(session.analysis(), order.frames());
            say("ready");
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                next(session, Order.parse(line));
            }
        } catch (FootageException | SetupException e) {
            say("failed", e.getMessage());
        } catch (IOException e) {
            say(
                    "failed",
                    "What was found could not be written (" + e.getMessage()
                            + "); if the disk is full, make room; then analyse it again.");
        }
    }

    private void next(ClipSession session, Order order) throws IOException {
        try {
            session.mark(order.known().marks(), progress());
        } catch (SetupException e) {
            say("refused", e.getMessage());
            return;
        }
        followed(session.analysis(), order.followed());
        // The report takes longer than a person who drags on waits: it is written when no more comes.
        if (quiet()) {
            write(session.analysis(), order);
        }
        say("ready");
    }

    private boolean quiet() throws IOException {
        for (int waited = 0; waited < QUIET_MILLIS; waited += 50) {
            if (in.ready()) {
                return false;
            }
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            }
        }
        return true;
    }

    private void followed(ClipAnalysis analysis, Path file) throws IOException {
        Files.createDirectories(file.getParent());
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        Files.writeString(beside, FollowedJson.write(analysis));
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        say("followed");
    }

    private void write(ClipAnalysis analysis, Order order) throws IOException {
        Path place = order.place();
        Files.createDirectories(place.getParent());
        new CastFolder().write(analysis, place, look.calling(order.name()), progress());
        say(
                "written",
                place.getFileName().toString(),
                Integer.toString(analysis.casts().size()));
    }

    private void pictures(ClipAnalysis analysis, Path folder) throws IOException {
        if (Files.isDirectory(folder)) {
            return;
        }
        Path beside = folder.resolveSibling(folder.getFileName() + ".part");
        delete(beside);
        Files.createDirectories(beside);
        FramePictures.write(
                Footage.open(analysis.clip(), analysis.info()),
                beside,
                wanted(analysis),
                LONGEST_PX,
                done -> progress().at("Making pictures to step through", done));
        Files.move(beside, folder, StandardCopyOption.ATOMIC_MOVE);
    }

    private static IntPredicate wanted(ClipAnalysis analysis) {
        if (analysis.info().frames() <= MOST_FRAMES) {
            return i -> true;
        }
        if (analysis.casts().isEmpty()) {
            return i -> i < MOST_FRAMES;
        }
        List<Double> times = analysis.info().times();
        return i -> analysis.casts().stream()
                .anyMatch(c -> times.get(i) > times.get(c.stroke().firstFrame()) - 0.5
                        && times.get(i) < times.get(c.stroke().lastFrame()) + 0.5);
    }

    static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> walk = Files.walk(folder)) {
                for (Path p : walk.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(p);
                }
            }
        }
    }

    private Progress progress() {
        return (stage, fraction) -> say("at", Double.toString(fraction), stage);
    }

    private synchronized void say(String... fields) {
        out.print(SAYS + String.join("\t", fields).replace('\n', ' ') + "\n");
        out.flush();
    }
}
