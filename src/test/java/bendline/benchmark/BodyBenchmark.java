package bendline.benchmark;

import bendline.analysis.Analyser;
import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.body.BodySight;
import bendline.body.BodyTrace;
import bendline.body.Joint;
import bendline.body.JointSight;
import bendline.body.RodHold;
import bendline.geometry.Point;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.simulate.RodSpec;
import bendline.simulate.Simulator;
import bendline.simulate.Truth;
import bendline.stroke.BodyReader;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** The followed body beside labels of filmed people and beside the joints of drawn anglers, with what it costs. */
public final class BodyBenchmark {

    /** Filmed clips and their labels. */
    private static final List<String[]> LABELLED = List.of(
            new String[] {"club-swing.mp4", "club-swing"},
            new String[] {"throw-no-rod.avi", "throw-no-rod"},
            new String[] {"rod-bent-portrait.mp4", "rod-bent-portrait"});

    /** The findings that rest on the body. */
    private static final List<String> FINDINGS = List.of("low-hands", "weak-pull", "out-of-order");

    private BodyBenchmark() {}

    /** The tables alone, for simulated clips with their truths beside them: {@code BodyBenchmark CLIPS FOLDER DRAWN.mp4 …}. */
    public static void main(String[] args) throws IOException {
        List<Path> drawn = Arrays.stream(args).skip(2).map(Path::of).toList();
        System.out.println(table(Path.of(args[0]), drawn, Path.of(args[1])));
    }

    /**
     * A paragraph and three tables.
     *
     * @param clips folder of filmed people
     * @param drawn simulated clips, their truths beside them
     * @param folder for clips of bodies with a timing of their own, which are rendered there
     */
    static String table(Path clips, List<Path> drawn, Path folder) throws IOException {
        StringBuilder out =
                new StringBuilder("**The caster's body.** Errors over the person's height; what is asked for is half of"
                        + " them within 5 %.\n\n");
        out.append(
                "| filmed, labelled by hand | frames found | median error | 90 % | within stated 68 % | ms a frame |\n"
                        + "|---|---|---|---|---|---|\n");
        for (String[] one : LABELLED) {
            Path file = clips.resolve(one[0]);
            if (Files.exists(file)) {
                out.append(filmed(file, one[1]));
            }
        }
        out.append(
                "\n| drawn | frames followed | median error | 90 % | measures within stated 68 % | s a clip | ms a frame |\n"
                        + "|---|---|---|---|---|---|---|\n");
        for (Path file : drawn) {
            out.append(drawn(file));
        }
        out.append("\n| rendered cast | ").append(String.join(" | ", FINDINGS)).append(" |\n|---|---|---|---|\n");
        for (String kind : BodyDeck.KINDS) {
            out.append(verdicts(kind, Simulator.renderInto(BodyDeck.filmed(kind), folder)));
        }
        return out.toString();
    }

    private static String verdicts(String kind, Path file) throws IOException {
        Setup setup = new Setup(null, RodSpec.medium().freeLengthM(), null, null, null, null, List.of());
        ClipAnalysis a = new Analyser().analyse(file, setup, Progress.SILENT);
        StringBuilder out = new StringBuilder("| " + kind);
        for (String id : FINDINGS) {
            String state = a.casts().stream()
                    .flatMap(c -> c.review().findings().stream())
                    .filter(f -> f.id().equals(id))
                    .map(f -> f.state().id())
                    .findFirst()
                    .orElse("no cast");
            out.append(" | ").append(state);
        }
        return out + " |\n";
    }

    private static String filmed(Path file, String labels) throws IOException {
        long start = System.nanoTime();
        BodyLook.Score s = BodyLook.score(file, BodyLabels.read(labels), 1);
        return String.format(
                Locale.ROOT,
                "| %s | %d of %d | %.3f | %.3f | %.0f %% | %.0f (decoding and reading ahead included) |%n",
                labels,
                s.found(),
                s.asked(),
                s.quantile(0.5),
                s.quantile(0.9),
                100 * s.inside(),
                (System.nanoTime() - start) / 1e6 / s.looked());
    }

    private static String drawn(Path file) throws IOException {
        Truth truth = Truth.read(Simulator.truthBeside(file));
        Stage stage = new Stage();
        ClipAnalysis a = new Analyser().analyse(file, Setup.NONE, stage);
        List<Double> all = new ArrayList<>();
        ScoreBody.errors(a, truth).values().forEach(all::addAll);
        Collections.sort(all);
        int asked = a.body().asked();
        return String.format(
                Locale.ROOT,
                "| %s | %d of %d | %.3f | %.3f | %s | %.1f | %.0f |%n",
                file.getFileName(),
                a.body().sights().size(),
                asked,
                all.isEmpty() ? Double.NaN : all.get(all.size() / 2),
                all.isEmpty() ? Double.NaN : all.get((int) (0.9 * (all.size() - 1))),
                measures(a, truth),
                stage.seconds(),
                1000 * stage.seconds() / Math.max(1, asked));
    }

    /** Times the following of the body. */
    private static final class Stage implements Progress {

        private long first;
        private long last;

        @Override
        public void at(String stage, double done) {
            if (stage.equals("Following the caster")) {
                last = System.nanoTime();
                first = first == 0 ? last : first;
            }
        }

        double seconds() {
            return (last - first) / 1e9;
        }
    }

    /** Of the body's measures, how many lie within their uncertainty of what the true joints give. */
    static String measures(ClipAnalysis a, Truth truth) {
        int inside = 0;
        int told = 0;
        Set<String> off = new TreeSet<>();
        for (CastAnalysis cast : a.casts()) {
            BodyTrace exact = exact(a, truth, cast.stroke().castsTo());
            Stroke wanted = new BodyReader(a.trace(), a.setup(), a.info().slowMotion()).read(cast.stroke(), exact);
            for (Measure m : cast.stroke().measures()) {
                Measure w = wanted.measure(m.id());
                if (m.value() == null
                        || w.value() == null
                        || m.basis().equals(w.basis()) && m.value().equals(w.value())) {
                    continue;
                }
                told++;
                boolean in = Math.abs(m.value() - w.value()) <= m.plusMinus();
                inside += in ? 1 : 0;
                if (Math.abs(m.value() - w.value()) > 2 * m.plusMinus()) {
                    off.add(m.id());
                }
            }
        }
        return inside + " of " + told + (off.isEmpty() ? "" : ", beyond twice: " + String.join(", ", off));
    }

    /** A body that is where the truth says. */
    private static BodyTrace exact(ClipAnalysis a, Truth truth, Side side) {
        double height =
                truth.frames().get(0).pxPerMetreGrip() * truth.scenario().statureM();
        List<BodySight> sights = new ArrayList<>();
        for (BodySight s : a.body().sights()) {
            Map<String, Point> joints = truth.frames().get(s.frame()).joints();
            Map<Joint, JointSight> at = new EnumMap<>(Joint.class);
            for (Joint j : Joint.values()) {
                Point p = a.trace().motion().toReference(s.frame(), joints.get(j.id()));
                at.put(j, new JointSight(p, 1, 1e-3 * height));
            }
            sights.add(new BodySight(s.frame(), s.seconds(), 1, at));
        }
        Joint upper = side == Side.RIGHT ? Joint.RIGHT_WRIST : Joint.LEFT_WRIST;
        RodHold hold = new RodHold(upper, a.body().hands().apartPx(), 1, "both wrists");
        return new BodyTrace(sights, sights.size(), height, 0.01 * height, hold, null);
    }
}
