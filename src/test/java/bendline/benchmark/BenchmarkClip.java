package bendline.benchmark;

import bendline.rod.Blank;
import bendline.rod.SimulatedRodTest;
import bendline.scene.BlankFacts;
import bendline.scene.Setup;
import bendline.simulate.Scenario;
import bendline.simulate.Simulator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * A clip to be judged by.
 *
 * @param file the clip
 * @param truth what is true of it
 * @param setup what an angler knows without looking at the picture: rod length, drop, rig mass and how stiff the rod is;
 *     never where anything is
 */
record BenchmarkClip(Path file, TruthClip truth, Setup setup) {

    /** Renders a scenario into a folder. */
    static BenchmarkClip rendered(Scenario scenario, Path folder) throws IOException {
        Path file = Simulator.renderInto(scenario, folder);
        return existing(scenario, file);
    }

    /** A scenario that was rendered before. */
    static BenchmarkClip existing(Scenario scenario, Path file) throws IOException {
        return new BenchmarkClip(
                file,
                Truths.read(Simulator.truthBeside(file)),
                told(
                                scenario.rod().lengthM(),
                                scenario.rig().dropM(),
                                scenario.rig().massG() / 1000)
                        .withBlank(underAWeight(scenario)));
    }

    /** The rod measured beforehand from a picture of it under a bottle of water, read with errors of 3 mm. */
    private static BlankFacts underAWeight(Scenario scenario) {
        Blank b = SimulatedRodTest.calibrated(scenario.rod(), scenario.rig().massG() / 85, scenario.seed());
        return new BlankFacts(
                null,
                null,
                null,
                new BlankFacts.Measured(
                        b.stiffnessNm2(), b.stiffnessRelativeSd(), b.taper().stiffnessAt(1)));
    }

    /** A clip of the second simulator, with its truth beside it as NAME.json. */
    static BenchmarkClip secondSimulator(Path file) throws IOException {
        String name = file.getFileName().toString();
        Path json = file.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ".json");
        JsonNode cast = new ObjectMapper().readTree(json.toFile()).path("casts").path(0);
        Setup setup = cast.isMissingNode()
                ? Setup.NONE
                : told(
                        cast.path("rod").path("length_m").asDouble(),
                        cast.path("rig").path("drop_m").asDouble(),
                        cast.path("rig").path("mass_kg").asDouble());
        return new BenchmarkClip(file, RenderedTruth.read(json), setup);
    }

    private static Setup told(double rodLengthM, double dropM, double rigMassKg) {
        return new Setup(rodLengthM, null, dropM, rigMassKg, null, null, List.of());
    }
}
