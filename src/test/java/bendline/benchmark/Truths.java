package bendline.benchmark;

import bendline.simulate.Truth;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;

/** Reads truth of either kind. */
final class Truths {

    private Truths() {}

    /**
     * @throws IOException if the file cannot be read
     * @throws IllegalArgumentException if it is no truth that we know
     */
    static TruthClip read(Path json) throws IOException {
        JsonNode root = new ObjectMapper().readTree(json.toFile());
        if (RenderedTruth.isIt(root)) {
            return RenderedTruth.read(root);
        }
        if (root.path("format").asText().equals(Truth.FORMAT)) {
            return SimulatedTruth.of(Truth.read(json));
        }
        throw new IllegalArgumentException(json + " is not a truth file that is known here");
    }
}
