package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Launched;
import bendline.analysis.Reach;
import bendline.flight.Outlook;
import bendline.scene.Conditions;
import bendline.scene.Conditions.RigType;
import bendline.scene.Setup;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Distance, gains, kit and limits on the page and in the file for machines. */
class DistanceSectionTest {

    private static final Setup SETUP = new Setup(
            3.9,
            3.2,
            null,
            null,
            null,
            null,
            List.of(),
            new Conditions(
                    new Conditions.Rig(RigType.FEEDER_LOADED, 0.06, 0.014, null, null),
                    new Conditions.Tackle(0.07, null, 0.22e-3, 60.0, 90.0, null, null),
                    new Conditions.Wind(4.0, 20.0, null),
                    new Conditions.Outcome(null, null, 104.0, null)));

    private static final ClipAnalysis KNOWN = analysis(Launched.told(56.0, 1.5, 42.0, 2));
    private static final ClipAnalysis UNKNOWN = AnalyticCast.analysis(Path.of("clip.mp4"));

    private static ClipAnalysis analysis(Launched launched) {
        ClipAnalysis plain = AnalyticCast.analysis(Path.of("clip.mp4"));
        CastAnalysis cast = plain.casts().get(0);
        Outlook outlook = Reach.of(SETUP, launched);
        return new ClipAnalysis(
                plain.clip(),
                plain.info(),
                SETUP,
                plain.trace(),
                plain.quality(),
                List.of(new CastAnalysis(cast.stroke(), cast.review(), outlook)));
    }

    private static String page(ClipAnalysis analysis) {
        return new ReportPage(analysis, Map.of(), Map.of()).write();
    }

    @Test
    void thePageSaysHowFarAndWhatWouldTakeItFarther() {
        assertThat(page(KNOWN))
                .containsPattern("the rig should land about \\d+\u00a0m out")
                .contains("In still air the same throw would make")
                .contains("The next ten metres, with the least effort: a stem or tail")
                .contains("With kit", "With technique", "Kit, launch and wind it was worked out with")
                .contains("Your kit goes past the usual limits", "the rod is made to cast 70\u00a0g at most");
    }

    @Test
    void bothChartsHaveRealTextAndThePagesColours() {
        String page = page(KNOWN);
        for (String size : List.of("wide", "narrow")) {
            int at = page.indexOf("id=\"cast1-gains-" + size);
            String svg = page.substring(at, page.indexOf("</svg>", at));
            assertThat(svg).contains("<text", "stem", "var(--ink)").doesNotContain("rgb(");
        }
    }

    @Test
    void whatCantBeToldIsSaidWithItsReasonAndNoLimitIsInvented() {
        String page = page(UNKNOWN);
        assertThat(page)
                .contains("How far this cast should go can’t be told".replace('’', '\''))
                .doesNotContain("What would take it farther", "Your kit goes past", "In still air");
    }

    @Test
    void theFileHasTheSameNumbersAndFitsItsSchema() throws IOException {
        JsonNode known = new ObjectMapper().readTree(new AnalysisJson().write(KNOWN));
        JsonNode unknown = new ObjectMapper().readTree(new AnalysisJson().write(UNKNOWN));
        try (InputStream in = AnalysisJson.class.getResourceAsStream("analysis.schema.json")) {
            var schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(in);
            assertThat(schema.validate(known)).isEmpty();
            assertThat(schema.validate(unknown)).isEmpty();
        }
        JsonNode flight = known.at("/casts/0/flight");
        Outlook o = KNOWN.casts().get(0).outlook();
        assertThat(flight.at("/distance/value").asDouble())
                .isEqualTo(o.distanceM().value(), org.assertj.core.data.Offset.offset(1e-6));
        assertThat(flight.get("gains")).hasSize(o.gains().size());
        assertThat(flight.at("/fittedLoss/casts").asInt()).isEqualTo(1);
        assertThat(known.at("/setup/conditions/rigType").asText()).isEqualTo("feeder-loaded");
        assertThat(unknown.at("/casts/0/flight/distance/value").isNull()).isTrue();
        assertThat(unknown.at("/casts/0/flight/distance/basis").asText()).isNotBlank();
    }
}
