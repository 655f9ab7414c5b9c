package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.ClipAnalysis;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MachineFilesTest {

    private static final String HEADER =
            "frame,seconds,cast,grip_x,grip_y,tip_x,tip_y,tip_sd,tip_seen,rig_x,rig_y,rig_sd,rig_seen,"
                    + "butt_angle_deg,chord_ratio,tip_speed_mps";

    private final ClipAnalysis cast = AnalyticCast.analysis(Path.of("cast.mp4"));
    private final Locale before = Locale.getDefault();

    @AfterEach
    void restoreLocale() {
        Locale.setDefault(before);
    }

    @Test
    void jsonFitsItsSchemaWithAndWithoutACast() throws IOException {
        for (ClipAnalysis analysis : List.of(cast, AnalyticCast.withoutCast(Path.of("empty.mp4")))) {
            assertThat(schema().validate(tree(analysis))).isEmpty();
        }
    }

    @Test
    void schemaRefusesAnUnknownEventWithATime() throws IOException {
        JsonNode tree = tree(cast);
        ((com.fasterxml.jackson.databind.node.ObjectNode) tree.at("/casts/0/events/release")).putNull("seconds");
        assertThat(schema().validate(tree)).isNotEmpty();
    }

    @Test
    void missingEventsAndMeasuresArePresentWithTheirReason() throws IOException {
        JsonNode tree = tree(cast);
        assertThat(tree.at("/casts/0/events/clipNod/seconds").isNull()).isTrue();
        assertThat(tree.at("/casts/0/events/clipNod/basis").asText()).contains("clip ends");
        assertThat(tree.at("/casts/0/measures/rigDrop/value").isNull()).isTrue();
        assertThat(tree.at("/casts/0/measures/rigDrop/basis").asText()).contains("not seen");
    }

    @Test
    void csvHasOneRowAFrameAndItsNumbersAreThoseOfTheFormulas() throws IOException {
        List<CSVRecord> rows = rows();
        assertThat(rows).hasSize(AnalyticCast.FRAMES);
        CSVRecord row = rows.get(100);
        double t = AnalyticCast.seconds(100);
        assertThat(Double.parseDouble(row.get("tip_x")))
                .isCloseTo(AnalyticCast.blank(t).last().x(), org.assertj.core.data.Offset.offset(0.006));
        assertThat(Double.parseDouble(row.get("butt_angle_deg")))
                .isCloseTo(Math.toDegrees(AnalyticCast.buttAngle(t)), org.assertj.core.data.Offset.offset(0.006));
        assertThat(row.get("cast")).isEqualTo("1");
        assertThat(rows.get(0).get("cast")).isEmpty();
    }

    @Test
    void csvLeavesWhatWasNotSeenEmptyEvenWhereAGuessBridgesTheGap() throws IOException {
        CSVRecord row = rows().get(AnalyticCast.GAP_FROM);
        assertThat(List.of(row.get("tip_seen"), row.get("tip_x"), row.get("tip_y"), row.get("tip_sd")))
                .containsExactly("0", "", "", "");
        assertThat(row.get("chord_ratio")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"de", "ar-EG", "tr"})
    void noMachineFileDependsOnTheLocale(String tag) throws IOException {
        Locale.setDefault(Locale.ROOT);
        String json = new AnalysisJson().write(cast);
        String csv = csv();
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertThat(new AnalysisJson().write(cast)).isEqualTo(json);
        assertThat(csv()).isEqualTo(csv).startsWith(HEADER + "\n");
    }

    private String csv() throws IOException {
        StringBuilder out = new StringBuilder();
        new FramesCsv().write(cast, out);
        return out.toString();
    }

    private List<CSVRecord> rows() throws IOException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.parse(csv(), format)) {
            return parser.getRecords();
        }
    }

    private static JsonNode tree(ClipAnalysis analysis) throws IOException {
        return new ObjectMapper().readTree(new AnalysisJson().write(analysis));
    }

    private static JsonSchema schema() throws IOException {
        try (InputStream in = AnalysisJson.class.getResourceAsStream("analysis.schema.json")) {
            return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(in);
        }
    }
}
