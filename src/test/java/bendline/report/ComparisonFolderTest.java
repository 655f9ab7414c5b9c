package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.Progress;
import bendline.compare.Cast;
import bendline.compare.CastSet;
import bendline.compare.Comparer;
import bendline.compare.Comparison;
import bendline.compare.Condition;
import bendline.compare.StillAir;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.stroke.Measure;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ComparisonFolderTest {

    @TempDir
    private static Path temp;

    private static Path out;
    private static Comparison comparison;

    @BeforeAll
    static void writeOnce() throws IOException {
        Path folder = AnalysisReaderTest.write(AnalyticCast.analysis(Path.of("cast.mp4")), temp.resolve("cast"));
        AnalyticCast.render(folder.resolve("marked.mp4"));
        ReadCast read = new AnalysisReader().read(folder).get(0);
        comparison = compared(read);
        out = temp.resolve("out");
        List<ReadCast> six = List.of(read, read, read, read, read, read);
        new ComparisonFolder().write(comparison, six, six, out, Progress.SILENT);
    }

    /** Six casts a set; in B the rod falls less and the rig is lighter. */
    private static Comparison compared(ReadCast read) {
        List<Cast> a = new ArrayList<>();
        List<Cast> b = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            a.add(cast(read, "a" + i, 25 + i, "90 g", i + 1));
            b.add(cast(read, "b" + i, 2 + i, "60 g", i + 7));
        }
        return new Comparer(List.of("buttFall", "tempo"), Comparer.Pairing.WHERE_THEY_ALTERNATE, StillAir.FLOWN)
                .compare(new CastSet("held & <low>", a), new CastSet("held high", b));
    }

    private static Cast cast(ReadCast read, String name, double fall, String rig, int number) {
        Cast c = read.cast(
                name, new Cast.Turn("2026-05-03", number), Map.of(Condition.RIG_MASS, rig), null, Cast.noDistance());
        List<Measure> measures = List.of(
                new Measure("buttFall", "Fall of the rod after release", "deg", fall, 0.9, "made up"),
                new Measure("tempo", "Tempo", "1", 4 + 0.1 * (number % 6), 0.1, "made up"),
                new Measure("ringHz", "Ring", "Hz", 4.0 + number, 0.1, "made up"));
        return new Cast(name, c.turn(), c.conditions(), null, c.distance(), measures);
    }

    @Test
    void holdsWhatTheReadmePromises() throws IOException {
        assertThat(out.resolve("comparison.html")).isNotEmptyFile();
        assertThat(out.resolve("comparison.json")).isNotEmptyFile();
        assertThat(out.resolve("charts/fans.svg")).content().contains("<svg");
        assertThat(out.resolve("charts/time-lines.svg")).content().contains("seconds after the release");
        assertThat(out.resolve("frames/a+0000ms.png")).isNotEmptyFile();
    }

    @Test
    void whatElseChangedStandsBeforeWhatChangedInTheStroke() throws IOException {
        String page = Files.readString(out.resolve("comparison.html"));
        assertThat(page).contains("held &amp; &lt;low&gt;");
        int besides = page.indexOf("The weight of the rig as cast changed too: 90\u00a0g in A, 60\u00a0g in B.");
        assertThat(besides).isPositive().isLessThan(page.indexOf("What changed in the stroke"));
        assertThat(page)
                .contains("changed, but so did something else")
                .contains(
                        "Not to be put down to technique alone: the weight of the rig as cast changed at the same time.")
                .contains("All of A was cast before B in one session");
        assertThat(page).doesNotContain("<script", "<link", "@import", "<iframe");
    }

    @Test
    void itIsWrittenAsItsReaderWritesNumbers() {
        ComparisonPictures none = new ComparisonPictures(List.of(), List.of(), List.of(), List.of(), "", "", false);
        String page = new ComparisonPage(comparison, none, new Reader(Locale.GERMANY, true)).write();
        assertThat(page)
                .contains("90\u00a0g (3,2\u00a0oz) in A, 60\u00a0g (2,1\u00a0oz) in B.")
                .doesNotContain("90\u00a0g in A");
    }

    @Test
    void theJsonFitsItsSchemaEverywhere() throws IOException {
        JsonSchema schema;
        try (InputStream in = ComparisonJson.class.getResourceAsStream("comparison.schema.json")) {
            schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(in);
        }
        String json = Files.readString(out.resolve("comparison.json"));
        assertThat(schema.validate(new ObjectMapper().readTree(json))).isEmpty();
        assertThat(schema.validate(new ObjectMapper().readTree(json.replace("\"less\"", "\"better\""))))
                .isNotEmpty();
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertThat(new ComparisonJson().write(comparison)).isEqualTo(json);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void theClipSideBySideIsLongEnoughAndPlays() {
        ClipInfo info = Footage.open(out.resolve("side-by-side.mp4")).survey(f -> {});
        assertThat(info.width()).isEqualTo(1280);
        assertThat(info.frames()).isEqualTo(240);
    }

    @Test
    void rodsAreEquallyLongAndHandsInOnePlaceInThePanels() {
        ReadCast read = new AnalysisReader().read(temp.resolve("cast")).get(0);
        SetPictures set = SetPictures.of(List.of(read), comparison, false).orElseThrow();
        var grip = set.toPanel(640)
                .transform(
                        new java.awt.geom.Point2D.Double(
                                set.grip().x(), set.grip().y()),
                        null);
        assertThat(grip.getX()).isEqualTo(320, org.assertj.core.data.Offset.offset(0.5));
        assertThat(set.toPanel(640).getScaleX() * set.freePx())
                .isCloseTo(640 / SetPictures.WIDE, org.assertj.core.data.Offset.offset(1e-9));
    }
}
