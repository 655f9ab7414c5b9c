package bendline.benchmark;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.stroke.StrokeTimer;
import bendline.technique.Finding;
import bendline.technique.TechniqueReview;
import bendline.trace.Trace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Times the strokes in traces that were kept ({@link KeepTraces}) and prints how far each moment lies from the truth:
 * {@code ReadTraces TRACES CLIPS…}, folders. Seconds for dozens of clips.
 */
public final class ReadTraces {

    private ReadTraces() {}

    /** A kept trace, what is true of it, and its clip's settings. */
    record Kept(String name, Trace trace, TruthClip truth, Setup setup, double slow, double step) {}

    /** Runs it. */
    public static void main(String[] args) throws IOException {
        boolean each = Arrays.asList(args).contains("--each");
        List<Path> clips = new ArrayList<>();
        for (int i = 1; i < args.length; i++) {
            if (!args[i].startsWith("--")) {
                clips.add(Path.of(args[i]));
            }
        }
        MomentScores pooled = new MomentScores();
        for (Kept k : kept(Path.of(args[0]), clips)) {
            String text = read(k, pooled);
            if (each) {
                System.out.println(text);
            }
        }
        System.out.println(pooled);
    }

    static List<Kept> kept(Path traces, List<Path> clips) throws IOException {
        List<Kept> out = new ArrayList<>();
        try (var files = Files.list(traces)) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".trace")).sorted().toList()) {
                String name = file.getFileName().toString().replace(".trace", "");
                Path clip = clips.stream()
                        .map(c -> c.resolve(name + ".mp4"))
                        .filter(Files::exists)
                        .findFirst()
                        .orElse(null);
                if (clip != null) {
                    out.add(kept(name, file, clip));
                }
            }
        }
        return out;
    }

    private static Kept kept(String name, Path file, Path clip) throws IOException {
        Path scenario = clip.resolveSibling(name + ".scenario.json");
        double slow = 1;
        BenchmarkClip b;
        if (Files.exists(scenario)) {
            var s = bendline.simulate.ScenarioFiles.readScenario(scenario);
            slow = s.camera().slowMotionFactor();
            b = BenchmarkClip.existing(s, clip);
        } else {
            b = BenchmarkClip.secondSimulator(clip);
        }
        List<TruthFrame> f = b.truth().frames();
        double step = (f.get(f.size() - 1).seconds() - f.get(0).seconds()) / (f.size() - 1);
        return new Kept(name, TraceFile.read(file), b.truth(), b.setup(), slow, step);
    }

    private static String read(Kept k, MomentScores pooled) {
        List<Stroke> strokes =
                new ArrayList<>(new StrokeTimer().time(k.trace(), k.setup(), new SlowMotion(k.slow(), "given")));
        StringBuilder out = new StringBuilder(String.format(
                Locale.ROOT,
                "%s: %d casts of %d, %.0f fps",
                k.name(),
                strokes.size(),
                k.truth().casts().size(),
                k.slow() / k.step()));
        for (TruthCast cast : k.truth().casts()) {
            Stroke s = MomentScores.match(strokes, cast, k.slow());
            strokes.remove(s);
            out.append("\n  ").append(pooled.add(s, cast, k.step()));
            if (s != null) {
                findings(s, cast, out);
            }
        }
        return out.append(strokes.isEmpty() ? "" : "\n  INVENTED " + strokes.size())
                .toString();
    }

    private static void findings(Stroke s, TruthCast cast, StringBuilder out) {
        out.append("\n    ").append(s.event(EventKind.RELEASE).basis());
        for (Finding f : new TechniqueReview().review(s).findings()) {
            String grade = cast.faults().get(f.id());
            if (grade != null) {
                out.append("\n    ")
                        .append(f.id())
                        .append(" made ")
                        .append(grade)
                        .append(": ");
                out.append(f.state().id()).append(". ").append(f.says());
            }
        }
    }
}
