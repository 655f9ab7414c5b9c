package bendline.stroke;

import bendline.benchmark.SimulatedTruth;
import bendline.benchmark.TruthFrame;
import bendline.footage.SlowMotion;
import bendline.scene.BlankFacts;
import bendline.scene.Setup;
import bendline.simulate.Scenario;
import bendline.simulate.Simulator;
import bendline.simulate.Truth;
import bendline.trace.Trace;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Casts of the simulator as a tracker with errors of a known size would see them, with their true pull and energy. */
final class SimulatedCasts {

    private SimulatedCasts() {}

    /** What was simulated and what was read of it. */
    record Read(Scenario scenario, Truth truth, List<Stroke> strokes) {

        double truth(String measure) {
            return truth.casts().get(0).measures().get(measure);
        }

        Measure told(String measure) {
            return strokes.get(0).measure(measure);
        }
    }

    static Trace trace(Truth truth, double sdPx, double dropped, long seed) {
        NoisyTrace out = new NoisyTrace(truth.clip().width(), truth.clip().height(), sdPx, dropped, seed);
        for (TruthFrame f : SimulatedTruth.of(truth).frames()) {
            if (f.blank() == null) {
                out.nothing(f.seconds());
            } else {
                out.add(f.seconds(), f.blank(), f.tipInView(), f.rigInView() ? f.rig() : null, f.chordRatio());
            }
        }
        return out.trace();
    }

    static Read read(Scenario scenario, @Nullable BlankFacts facts, double sdPx, double dropped) {
        return read(Simulator.truth(scenario), facts, sdPx, dropped);
    }

    static Read read(Truth truth, @Nullable BlankFacts facts, double sdPx, double dropped) {
        return read(truth, facts, sdPx, dropped, truth.scenario().rig().massG() / 1000, 1);
    }

    /** Nobody weighed the rig. */
    static Read unweighed(Truth truth, @Nullable BlankFacts facts, double sdPx, double dropped) {
        return read(truth, facts, sdPx, dropped, null, 1);
    }

    /** Somebody told the rod's length wrongly, by a factor. */
    static Read misled(Truth truth, @Nullable BlankFacts facts, double sdPx, double dropped, double factor) {
        return read(truth, facts, sdPx, dropped, truth.scenario().rig().massG() / 1000, factor);
    }

    private static Read read(
            Truth truth,
            @Nullable BlankFacts facts,
            double sdPx,
            double dropped,
            @Nullable Double rigKg,
            double factor) {
        Scenario scenario = truth.scenario();
        Trace trace = trace(truth, sdPx, dropped, scenario.seed());
        Setup setup = new Setup(null, factor * scenario.rod().freeLengthM(), null, rigKg, null, null, List.of())
                .withBlank(facts);
        SlowMotion slow = new SlowMotion(scenario.camera().slowMotionFactor(), "given");
        return new Read(scenario, truth, new StrokeTimer().time(trace, setup, slow));
    }
}
