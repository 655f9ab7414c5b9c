package bendline.benchmark;

import bendline.footage.Footage;
import java.nio.file.Path;
import java.util.Locale;

/** Prints how the general trackers do on one clip beside a trace that was kept: {@code ScoreBaselines CLIP.mp4 TRUTH.json CLIP.trace}. */
public final class ScoreBaselines {

    private ScoreBaselines() {}

    /** Runs it. */
    public static void main(String[] args) throws Exception {
        TruthClip truth = Truths.read(Path.of(args[1]));
        Baselines.run(Footage.open(Path.of(args[0])), truth, TraceFile.read(Path.of(args[2])))
                .forEach((name, score) -> System.out.printf(Locale.ROOT, "%s %s: %s%n", truth.name(), name, score));
    }
}
