package bendline.benchmark;

import bendline.analysis.Analyser;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.footage.DecodeSpeed;
import bendline.footage.Footage;
import bendline.footage.FootageException;
import bendline.report.MarkedClipCost;
import bendline.simulate.Scenario;
import bendline.simulate.ScenarioDeck;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Renders fresh clips, analyses them without marks and prints how far that lies from the truth, beside the targets, the
 * clips of a second simulator and three general trackers: {@code Benchmark PROJECT [--keep] [--clips N]}. With {@code
 * --keep} clips that an earlier run left are used again: for work on the tracker, not for the table in the README.
 */
public final class Benchmark {

    /**
     * Dealt once for the table in the README and looked at by nobody while the tracker was made, so that nothing can have been tuned to
     * these clips; whoever starts to look at them one by one deals others.
     */
    private static final long SEED = 8_214_503;

    /** Two dozen: each kind of stroke twice. */
    private static final int CLIPS = 24;

    /** Clips on which the body is set beside the truth and timed, one after the other. */
    private static final int BODIES = 4;

    private final Path folder;
    private final boolean keep;
    private final int count;

    private Benchmark(Path project, List<String> options) {
        this.folder = project.resolve("target").resolve("benchmark");
        this.keep = options.contains("--keep");
        int at = options.indexOf("--clips");
        this.count = at < 0 ? CLIPS : Integer.parseInt(options.get(at + 1));
    }

    /** Runs it. */
    public static void main(String[] args) throws Exception {
        Path project =
                Path.of(args.length == 0 ? "." : args[0]).toAbsolutePath().normalize();
        new Benchmark(project, Arrays.asList(args)).run(project);
    }

    private void run(Path project) throws IOException, InterruptedException {
        List<BenchmarkClip> own = ownClips();
        List<ClipScore> ownScores = scores(own);
        ClipScore all = ClipScore.pooled("own", ownScores);
        BenchmarkTable table = new BenchmarkTable()
                .say(String.format(
                        Locale.ROOT,
                        "Measured on %s by `mvn -q verify -Pbenchmark`. ✗ marks a missed target.",
                        LocalDate.now(ZoneOffset.UTC)))
                .set(all.clips() + " clips rendered for this (seed " + SEED + ")", all)
                .details(all);
        List<ClipScore> secondScores = scores(secondClips(project));
        if (secondScores.isEmpty()) {
            table.say("The clips of a second simulator are not here, so there are no rows for them.");
        } else {
            ClipScore second = ClipScore.pooled("second", secondScores);
            table.set(second.clips() + " clips of a second, independent simulator", second)
                    .details(second);
        }
        BenchmarkClip large = largest(own);
        table.load(
                large.truth().name() + describe(large.truth()),
                Load.of("decode", large.file().toString()),
                Load.of("analyse", large.file().toString()));
        table.marked(
                large.truth().name() + describe(large.truth()),
                MarkedClipCost.seconds(large.file()),
                Load.of("mark", large.file().toString()));
        table.say("Decoding the same clip, " + DecodeSpeed.of(large.file()));
        List<ClipScore> each = new ArrayList<>(ownScores);
        each.addAll(secondScores);
        table.clips("Clip by clip", each);
        table.say(RealFootage.table(shared(project).resolve("clips")));
        table.say(BodyBenchmark.table(
                shared(project).resolve("clips"),
                own.stream()
                        .filter(c -> !c.truth().casts().isEmpty())
                        .limit(BODIES)
                        .map(BenchmarkClip::file)
                        .toList(),
                folder.resolve("bodies")));
        Files.writeString(folder.resolve("table.md"), table.toString());
        System.out.println(table);
    }

    private List<BenchmarkClip> ownClips() throws IOException {
        if (!keep) {
            empty(folder);
        }
        Files.createDirectories(folder);
        return ScenarioDeck.deal(SEED, count).parallelStream().map(this::clip).toList();
    }

    private BenchmarkClip clip(Scenario scenario) {
        Path file = folder.resolve(scenario.name() + ".mp4");
        boolean there = keep && Files.exists(folder.resolve(scenario.name() + ".scenario.json"));
        tell("rendering", scenario.name());
        try {
            return there ? BenchmarkClip.existing(scenario, file) : BenchmarkClip.rendered(scenario, folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<BenchmarkClip> secondClips(Path project) throws IOException {
        Path shared = Path.of(System.getProperty(
                "bendline.shared", project.resolve("../shared").toString()));
        Path rendered = shared.resolve("rendered");
        List<BenchmarkClip> clips = new ArrayList<>();
        if (Files.isDirectory(rendered)) {
            try (Stream<Path> files = Files.list(rendered)) {
                for (Path file : files.filter(f -> f.toString().endsWith(".mp4"))
                        .sorted()
                        .toList()) {
                    clips.add(BenchmarkClip.secondSimulator(file));
                }
            }
        }
        return clips;
    }

    private static Path shared(Path project) {
        return Path.of(System.getProperty(
                "bendline.shared", project.resolve("../shared").toString()));
    }

    /** Side by side, as many as there are processors; time and memory are measured apart, one program alone. */
    private List<ClipScore> scores(List<BenchmarkClip> clips) {
        return clips.parallelStream().map(Benchmark::score).toList();
    }

    private static ClipScore score(BenchmarkClip clip) {
        tell("analysing", clip.truth().name());
        boolean rod = clip.truth().frames().stream().anyMatch(TruthFrame::tipInView);
        ClipAnalysis told = new Analyser().analyse(clip.file(), clip.setup(), Progress.SILENT);
        Map<String, PointScore> baselines =
                rod ? Baselines.run(Footage.open(clip.file()), clip.truth(), told.trace()) : Map.of();
        ClipScore score = ClipScore.of(told, clip.truth(), baselines);
        tell("scored", BenchmarkTable.clip(score).strip());
        return score;
    }

    private static BenchmarkClip largest(List<BenchmarkClip> clips) {
        return clips.stream()
                .max(Comparator.comparingLong(c -> (long) c.truth().width()
                        * c.truth().height()
                        * c.truth().frames().size()))
                .orElseThrow(() -> new FootageException("no clip was rendered"));
    }

    private static String describe(TruthClip truth) {
        return String.format(
                Locale.ROOT,
                " (%d×%d, %d frames)",
                truth.width(),
                truth.height(),
                truth.frames().size());
    }

    private static void empty(Path folder) throws IOException {
        if (Files.isDirectory(folder)) {
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.toList()) {
                    Files.delete(file);
                }
            }
        }
    }

    private static void tell(String what, String name) {
        System.err.println(what + " " + name);
    }
}
