package bendline.benchmark;

import bendline.analysis.Analyser;
import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.body.BodySight;
import bendline.body.Joint;
import bendline.geometry.Point;
import bendline.scene.Setup;
import bendline.simulate.Scenario;
import bendline.simulate.ScenarioFiles;
import bendline.simulate.Simulator;
import bendline.simulate.Truth;
import bendline.stroke.Measure;
import bendline.technique.Finding;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Sets the followed body of simulated clips beside the truth: {@code ScoreBody NAME.scenario.json …}, each beside its clip. */
public final class ScoreBody {

    private ScoreBody() {}

    /** Errors over the figure's height, per joint, in the frames that were followed. */
    static Map<Joint, List<Double>> errors(ClipAnalysis analysis, Truth truth) {
        Map<Joint, List<Double>> out = new TreeMap<>();
        for (BodySight s : analysis.body().sights()) {
            Truth.Frame f = truth.frames().get(s.frame());
            Map<String, Point> joints = f.joints();
            Double scale = f.pxPerMetreGrip();
            if (joints == null || scale == null) {
                continue;
            }
            for (Joint j : Joint.values()) {
                Point seen = analysis.trace()
                        .motion()
                        .toPicture(s.frame(), s.joint(j).place());
                out.computeIfAbsent(j, k -> new ArrayList<>())
                        .add(seen.distance(joints.get(j.id()))
                                / (scale * truth.scenario().statureM()));
            }
        }
        out.values().forEach(Collections::sort);
        return out;
    }

    /** Prints it. */
    public static void main(String[] args) throws Exception {
        for (String arg : args) {
            Path file = Path.of(arg);
            Scenario scenario = ScenarioFiles.readScenario(file);
            Truth truth = Simulator.truth(scenario);
            long t0 = System.nanoTime();
            ClipAnalysis a =
                    new Analyser().analyse(file.resolveSibling(scenario.name() + ".mp4"), Setup.NONE, Progress.SILENT);
            System.out.printf(
                    "%s: %.1f s, body %d of %d frames, height %.0f px, %s, upper %s%n",
                    scenario.name(),
                    (System.nanoTime() - t0) / 1e9,
                    a.body().sights().size(),
                    a.body().asked(),
                    a.body().heightPx(),
                    a.body().trouble() == null
                            ? a.body().hands().basis()
                            : a.body().trouble(),
                    a.body().hands().upper());
            errors(a, truth)
                    .forEach((j, e) -> System.out.printf(
                            "   %-15s median %.4f  90 %% %.4f%n",
                            j.id(), e.get(e.size() / 2), e.get((int) (0.9 * e.size()))));
            for (CastAnalysis c : a.casts()) {
                for (Measure m : c.stroke().measures()) {
                    if (m.basis().contains("wrist")
                            || m.label().contains("hand")
                            || m.label().contains("hips")
                            || m.label().contains("shoulder")
                            || m.label().contains("step")) {
                        System.out.printf(
                                "   %-36s %s ± %.3f %s | %s%n", m.id(), m.value(), m.plusMinus(), m.unit(), m.basis());
                    }
                }
                if (c.stroke().body() != null) {
                    c.stroke().body().peaks().forEach(p -> System.out.println("   " + p));
                }
                for (Finding f : c.review().findings()) {
                    if (f.id().matches("low-hands|weak-pull|out-of-order")) {
                        System.out.println("   " + f.id() + " " + f.state() + " " + f.says());
                    }
                }
            }
        }
    }
}
