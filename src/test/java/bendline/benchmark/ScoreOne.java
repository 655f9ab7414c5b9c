package bendline.benchmark;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.geometry.Point;
import bendline.scene.Setup;
import bendline.trace.RodTracker;
import bendline.trace.Trace;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/**
 * Follows the rod through one clip and prints how far that lies from the truth: {@code ScoreOne CLIP.mp4 TRUTH.json
 * [--dump] [--pictures DIR] [--from FRAME] [--to FRAME] [--every N]}.
 */
public final class ScoreOne {

    private ScoreOne() {}

    /** Runs it. */
    public static void main(String[] args) throws Exception {
        List<String> words = Arrays.asList(args);
        TruthClip truth = Truths.read(Path.of(args[1]));
        Footage footage = Footage.open(Path.of(args[0]));
        ClipInfo info = footage.survey(f -> {});
        long start = System.nanoTime();
        Trace trace = RodTracker.follow(footage, info, Setup.NONE, f -> {});
        double seconds = (System.nanoTime() - start) / 1e9;
        TraceScore score = TraceScore.of(trace, truth);
        IntPredicate which = range(words);
        if (words.contains("--dump")) {
            score.frames().stream().filter(f -> which.test(f.frame())).forEach(f -> dump(System.out, trace, f));
        }
        String folder = after(words, "--pictures");
        if (folder != null) {
            TracePictures.write(footage, score.frames(), which, Path.of(folder));
        }
        System.out.printf(
                Locale.ROOT,
                "%s [%.1f s, length %.1f±%.1f px%s]: %s%n",
                truth.name(),
                seconds,
                trace.freeLengthPx(),
                trace.freeLengthSdPx(),
                trace.trouble() == null ? "" : ", TROUBLE " + trace.trouble(),
                score);
    }

    private static IntPredicate range(List<String> words) {
        int from = number(words, "--from", 0);
        int to = number(words, "--to", Integer.MAX_VALUE);
        int every = number(words, "--every", 1);
        return i -> i >= from && i <= to && (i - from) % every == 0;
    }

    private static int number(List<String> words, String name, int otherwise) {
        String word = after(words, name);
        return word == null ? otherwise : Integer.parseInt(word);
    }

    private static @Nullable String after(List<String> words, String name) {
        int at = words.indexOf(name);
        return at < 0 || at + 1 >= words.size() ? null : words.get(at + 1);
    }

    private static void dump(PrintStream out, Trace trace, FrameScore f) {
        Point tip = f.traced().tip().position();
        Point rig = f.traced().rig().position();
        out.printf(
                Locale.ROOT,
                "%4d %7.3fs tip true %s%s traced %s err %6.2f sd %5.2f %s | blank %6.2f grip %5.1f"
                        + " | chord %.3f (true %.3f) butt %+6.2f° sd %.2f° | rig true %s%s traced %s err %6.2f sd %5.2f %s"
                        + " | cam %.2f%s%n",
                f.frame(),
                f.truth().seconds(),
                text(f.truth().tip()),
                f.truth().tipInView() ? "" : " (out)",
                text(tip),
                f.tipError(),
                f.traced().tip().sdPx(),
                f.traced().tip().seen() ? "seen" : "not: " + f.traced().tip().reason(),
                f.blankDistance(),
                f.gripError(),
                FrameScore.chord(trace, f.frame()),
                f.truth().chordRatio(),
                f.buttErrorDeg(),
                Math.toDegrees(f.traced().buttAngleSd()),
                text(f.truth().rig()),
                f.truth().rigInView() ? "" : " (out)",
                text(rig),
                f.rigError(),
                f.traced().rig().sdPx(),
                f.traced().rig().seen() ? "seen" : "not: " + f.traced().rig().reason(),
                f.cameraError(),
                f.traced().tip().seen() && f.truth().tipInView() && f.tipError() > TraceScore.WRONG_PX ? " WRONG" : "");
    }

    private static String text(@Nullable Point p) {
        return p == null ? "-" : String.format(Locale.ROOT, "%.1f,%.1f", p.x(), p.y());
    }
}
