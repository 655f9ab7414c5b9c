package bendline.simulate;

import bendline.geometry.Point;
import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Scenarios and truths as JSON. Points are pairs [x, y]. */
public final class ScenarioFiles {

    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    @JsonPropertyOrder({"x", "y"})
    private interface AsPair {}

    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .addMixIn(Point.class, AsPair.class)
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
            .build();

    private ScenarioFiles() {}

    /**
     * Reads a scenario.
     *
     * @throws IOException where the file is missing, is no JSON, or a setting is missing, unknown or out of range
     */
    public static Scenario readScenario(Path json) throws IOException {
        return read(json, Scenario.class, "scenario");
    }

    /**
     * Writes a scenario, one setting a line.
     *
     * @throws IOException where the file cannot be written
     */
    public static void writeScenario(Scenario scenario, Path json) throws IOException {
        Files.writeString(json, MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(scenario) + "\n");
    }

    static Truth readTruth(Path json) throws IOException {
        Truth truth = read(json, Truth.class, "truth");
        if (!truth.format().equals(Truth.FORMAT)) {
            throw new IOException(json + " is \"" + truth.format() + "\", not " + Truth.FORMAT);
        }
        return truth;
    }

    static void writeTruth(Truth truth, Path json) throws IOException {
        Files.writeString(json, MAPPER.writeValueAsString(truth) + "\n");
    }

    private static <T> T read(Path json, Class<T> kind, String what) throws IOException {
        try {
            JsonNode tree = MAPPER.readTree(Files.readString(json));
            // A cast says nothing of the body where it has no script of its own; every other setting must be there.
            for (JsonNode cast : tree.findParents("pushSeconds")) {
                ((ObjectNode) cast).putIfAbsent("body", NullNode.getInstance());
            }
            return MAPPER.treeToValue(tree, kind);
        } catch (JacksonException e) {
            Throwable cause = e.getCause() instanceof IllegalArgumentException ? e.getCause() : e;
            String why = cause == e ? e.getOriginalMessage() : cause.getMessage();
            throw new IOException(json + " is no usable " + what + ": " + why, e);
        }
    }
}
