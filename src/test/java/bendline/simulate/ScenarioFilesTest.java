package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScenarioFilesTest {

    @TempDir
    Path folder;

    @Test
    void aScenarioComesBackAsItWas() throws IOException {
        Scenario s = SmallScenario.cast(0.3, 0.6);
        Path file = folder.resolve("s.json");
        ScenarioFiles.writeScenario(s, file);
        assertThat(ScenarioFiles.readScenario(file)).isEqualTo(s);
        assertThat(schema("scenario").validate(new ObjectMapper().readTree(file.toFile())))
                .isEmpty();
    }

    @Test
    void aTruthComesBackAsItWas() throws IOException {
        Truth t = Simulator.truth(SmallScenario.ready(0, 1));
        Path file = folder.resolve("t.truth.json");
        t.write(file);
        assertThat(Truth.read(file)).isEqualTo(t);
        JsonNode json = new ObjectMapper().readTree(file.toFile());
        assertThat(schema("truth").validate(json)).isEmpty();
        assertThat(json.at("/frames/0/tip").isArray()).isTrue();
    }

    @Test
    void theSchemaRefusesAMissingFrameTime() throws IOException {
        Path file = folder.resolve("t.truth.json");
        Simulator.truth(SmallScenario.nobody()).write(file);
        JsonNode json = new ObjectMapper().readTree(file.toFile());
        ((com.fasterxml.jackson.databind.node.ObjectNode) json.at("/frames/0")).remove("seconds");
        assertThat(schema("truth").validate(json)).isNotEmpty();
    }

    @Test
    void aSettingOutOfRangeIsNamedWithItsLimits() throws IOException {
        Path file = folder.resolve("s.json");
        ScenarioFiles.writeScenario(SmallScenario.cast(0, 0), file);
        String text = Files.readString(file).replace("\"lengthM\" : 3.9", "\"lengthM\" : 40.0");
        Files.writeString(file, text);
        assertThatThrownBy(() -> ScenarioFiles.readScenario(file))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("rod length (m) is 40.0, allowed is 2.0 to 5.0");
    }

    @Test
    void anUnknownSettingIsRefused() throws IOException {
        Path file = folder.resolve("s.json");
        ScenarioFiles.writeScenario(SmallScenario.cast(0, 0), file);
        Files.writeString(file, Files.readString(file).replace("\"seed\"", "\"sead\" : 1, \"seed\""));
        assertThatThrownBy(() -> ScenarioFiles.readScenario(file)).hasMessageContaining("sead");
    }

    @Test
    void castsMustNotRunIntoEachOther() {
        Scenario s = SmallScenario.cast(0, 0);
        CastScript first = s.casts().get(0);
        assertThatThrownBy(() -> s.withCasts(java.util.List.of(first, first)))
                .hasMessageContaining("cast 2 must start after");
    }

    private static JsonSchema schema(String name) throws IOException {
        try (InputStream in = Truth.class.getResourceAsStream(name + ".schema.json")) {
            return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(in);
        }
    }
}
