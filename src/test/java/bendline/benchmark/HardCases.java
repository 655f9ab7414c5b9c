package bendline.benchmark;

import bendline.analysis.Analyser;
import bendline.analysis.Progress;
import bendline.simulate.CameraSpec;
import bendline.simulate.Presets;
import bendline.simulate.Scenario;
import bendline.simulate.ScenarioDeck;
import bendline.simulate.ScenarioFiles;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * One difficulty at a time, each with a row of its own: {@code HardCases FOLDER [--clips N]} renders N clips (1 if not told) of
 * every case into a folder and prints how far the trace lies from the truth. A clip is a cast dealt at random, filmed by a quiet
 * phone of 1080 rows and 60 frames a second, and then only what the case names is changed.
 */
public final class HardCases {

    /** Used by no other code. */
    private static final long SEED = 52_771_101;

    private static final ObjectMapper JSON = new ObjectMapper();

    /**
     * A difficulty.
     *
     * @param name as in the table
     * @param camera changes to a {@link CameraSpec}, as JSON
     * @param scene changes to the scene, as JSON
     * @param tip paint of the tip
     */
    private record Case(String name, String camera, String scene, String tip) {

        static Case camera(String name, String changes) {
            return new Case(name, changes, "{}", "ORANGE");
        }

        static Case scene(String name, String changes, String tip) {
            return new Case(name, "{}", changes, tip);
        }
    }

    private static final List<Case> CASES = List.of(
            Case.camera("nothing hard", "{}"),
            Case.camera("tip smeared over 40 px and more (1/110 s)", "{'exposureSeconds':0.009}"),
            Case.camera("30 frames a second at 1/60 s", "{'captureFps':30,'storedFps':30,'exposureSeconds':0.0166666}"),
            Case.scene("bare tip before woods and a bare tree", "{'bank':'WOODS','tree':true}", "PLAIN"),
            Case.scene("reeds and glitter", "{'reeds':150,'glints':1}", "PLAIN"),
            Case.scene("white tip before clouds", "{'bank':'OPEN','light':'OVERCAST'}", "WHITE"),
            Case.scene("light on dark and dark on light at dusk", "{'bank':'TREES','light':'EVENING'}", "YELLOW"),
            Case.camera("a hand that sways, 10 px a frame at most", "{'shake':12}"),
            Case.camera("a hand that sways, 25 px a frame at most", "{'shake':30}"),
            Case.camera("exposure that drifts by a third", "{'gainDrift':0.35}"),
            Case.scene("other rods in rests, posts", "{'restRods':4,'posts':10}", "PLAIN"),
            Case.scene("a neighbour casts", "{'neighbour':true}", "PLAIN"),
            Case.scene("people walk by", "{'walkers':3}", "PLAIN"),
            Case.scene("angler half hidden by bushes", "{'bushM':1.4}", "PLAIN"),
            Case.camera("the rod leaves the picture at the top", "{'aimYM':1.6,'distanceM':10}"),
            Case.camera("20 degrees off square, tilted by 4", "{'yawDeg':20,'rollDeg':4}"),
            Case.camera("heavy compression (0.7 Mbit/s)", "{'bitsPerSecond':700000}"),
            Case.camera("720 rows", "{'width':1280,'height':720,'focalPx':1007}"),
            Case.camera("portrait", "{'width':1080,'height':1920,'rotationDegrees':90,'distanceM':13}"));

    private final Path folder;
    private final int clips;

    private HardCases(Path folder, int clips) {
        this.folder = folder;
        this.clips = clips;
    }

    /** Runs it. */
    public static void main(String[] args) throws IOException {
        int clips = args.length > 2 && args[1].equals("--clips") ? Integer.parseInt(args[2]) : 1;
        new HardCases(Path.of(args[0]), clips).run();
    }

    private void run() throws IOException {
        Files.createDirectories(folder);
        List<Scenario> casts = ScenarioDeck.deal(SEED, 12 * (1 + CASES.size() * clips / 6)).stream()
                .filter(s -> s.casts().size() == 1 && !s.casts().get(0).putDown())
                .toList();
        List<Runnable> work = new ArrayList<>();
        List<List<ClipScore>> scores = new ArrayList<>();
        int next = 0;
        for (Case c : CASES) {
            List<ClipScore> row = new ArrayList<>();
            scores.add(row);
            for (int i = 0; i < clips; i++) {
                Scenario cast = casts.get(next++);
                int number = i;
                work.add(() -> add(row, made(cast, c, number)));
            }
        }
        List<String> others = List.of("twice", "nobody", "put-down");
        for (String preset : others) {
            List<ClipScore> row = new ArrayList<>();
            scores.add(row);
            work.add(() -> add(row, busy(Presets.named(preset))));
        }
        work.parallelStream().forEach(Runnable::run);
        String table = table(
                Stream.concat(
                                CASES.stream().map(Case::name),
                                Stream.of("two casts", "no cast, people walk by", "a rod put down without a cast"))
                        .toList(),
                scores);
        Files.writeString(folder.resolve("hard.md"), table);
        System.out.println(table);
    }

    private void add(List<ClipScore> row, Scenario scenario) {
        try {
            System.err.println("rendering " + scenario.name());
            BenchmarkClip clip = BenchmarkClip.rendered(scenario, folder);
            ClipScore score = ClipScore.of(
                    new Analyser().analyse(clip.file(), clip.setup(), Progress.SILENT),
                    clip.truth(),
                    java.util.Map.of());
            System.err.println("scored " + BenchmarkTable.clip(score).strip());
            synchronized (row) {
                row.add(score);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The cast as the case has it filmed. */
    private Scenario made(Scenario cast, Case how, int number) {
        ObjectNode tree = JSON.valueToTree(cast);
        ObjectNode camera = JSON.valueToTree(CameraSpec.tripod1080p60());
        camera.setAll(changes(how.camera()));
        tree.set("camera", camera);
        ObjectNode scene = JSON.valueToTree(bendline.simulate.SceneSpec.plain());
        scene.setAll(changes(how.scene()));
        tree.set("scene", scene);
        tree.put("tipColour", how.tip());
        tree.put("name", how.name().replaceAll("[^A-Za-z0-9]+", "-") + "-" + (number + 1));
        return scenario(tree);
    }

    private Scenario busy(Scenario preset) {
        ObjectNode tree = JSON.valueToTree(preset);
        ((ObjectNode) tree.get("scene")).setAll(changes("{'walkers':2,'posts':3}"));
        return scenario(tree);
    }

    private static ObjectNode changes(String json) {
        try {
            JsonNode node = JSON.readTree(json.replace('\'', '"'));
            return (ObjectNode) node;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Scenario scenario(ObjectNode tree) {
        try {
            Path file = folder.resolve(tree.get("name").asText() + ".scenario.json");
            Files.writeString(file, tree.toString());
            return ScenarioFiles.readScenario(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String table(List<String> names, List<List<ClipScore>> scores) {
        StringBuilder out = new StringBuilder(
                "| difficulty | tip median px | tip 95 % px | lost or wrong | wrong of those seen"
                        + " | rig seen | blank mean px | release, frames | casts told / made |\n|---|---|---|---|---|---|---|---|---|\n");
        for (int i = 0; i < names.size(); i++) {
            out.append(row(names.get(i), ClipScore.pooled(names.get(i), scores.get(i))));
        }
        return out.toString();
    }

    private static String row(String name, ClipScore s) {
        TraceScore t = s.trace();
        return String.format(
                Locale.ROOT,
                "| %s | %s | %s | %s | %s | %s | %s | %s | %d / %d%s |%n",
                name,
                number(t.tip().median()),
                number(t.tip().p95()),
                share(t.tipLostOrWrong()),
                share(t.tipWrongAmongSeen()),
                share(t.rigSeen()),
                number(t.blank().mean()),
                number(s.casts().events().errors("release"::equals).median()),
                s.casts().found().hits(),
                s.casts().found().of(),
                s.casts().invented() == 0 ? "" : " and " + s.casts().invented() + " invented");
    }

    private static String number(double value) {
        return Double.isNaN(value) ? "–" : String.format(Locale.ROOT, "%.2f", value);
    }

    private static String share(Tally t) {
        return t.of() == 0 ? "–" : String.format(Locale.ROOT, "%.1f %%", 100 * t.share());
    }
}
