package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.body.Faces;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The PDF and the marked clip with everything asked for, read back by a general-purpose library. */
class PdfReportTest {

    private static final double SLOWER = 4;

    @TempDir
    private static Path temp;

    private static Path out;
    private static ClipAnalysis analysis;

    @BeforeAll
    static void writeOnce() throws IOException {
        analysis = AnalyticCast.analysis(AnalyticCast.render(temp.resolve("evening 1.5.mp4")));
        out = temp.resolve("out");
        Reader reader = new Reader(Locale.GERMANY, true);
        ReportOptions options =
                new ReportOptions(new Faces(List.of()), reader, true, new MarkedOptions(SLOWER, true), null, null);
        new CastFolder().write(analysis, out, options, Progress.SILENT);
    }

    @Test
    void pagesAreA4AndTheirTextCanBeSelected() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(out.resolve("report.pdf").toFile())) {
            assertThat(pdf.getNumberOfPages()).isBetween(4, 12);
            for (PDPage page : pdf.getPages()) {
                // ISO 216: 210 mm by 297 mm; a point is the 72nd part of an inch of 25.4 mm.
                assertThat(page.getMediaBox().getWidth()).isBetween(595f, 596f);
                assertThat(page.getMediaBox().getHeight()).isBetween(841f, 842.5f);
            }
            String text =
                    new PDFTextStripper().getText(pdf).replace('\u00a0', ' ').replaceAll("\\s+", " ");
            assertThat(text)
                    .contains("The tip was dropped too early", "Do this next", "evening 1.5.mp4")
                    .contains("The stroke, moment by moment", "What was looked for", "Not there", "Cannot tell")
                    .contains("Measured", "What could not be told", "Before you try it", "30 m (33 yd)")
                    .contains("25,0 ± 0,9°")
                    .as("words inside the charts")
                    .contains("m from the hand at the start", "Butt angle, °", "6 Most bend", "2,55")
                    .doesNotContain("25.0");
        }
    }

    @Test
    void theFileForMachinesKeepsItsPoints() throws IOException {
        assertThat(out.resolve("analysis.json")).content().contains("\"value\" : 25.0");
        assertThat(Files.readAllLines(out.resolve("charts/cast1-load.csv")).get(1))
                .doesNotContain("\"0,");
    }

    @Test
    void theMarkedClipIsWiderAndLongerButHoldsTheSameFrames() {
        ClipInfo info = Footage.open(out.resolve("marked.mp4")).survey(f -> {});
        assertThat(info.frames()).isEqualTo(AnalyticCast.FRAMES);
        assertThat(info.width()).isGreaterThan(AnalyticCast.WIDTH).isEven();
        assertThat(info.height()).isEven();
        // The push begins at 2.31 s, the rod is straight at 2.68 s, 0.15 s more on either side; all of it 4 times as
        // long.
        double added = (SLOWER - 1) * (2.68 - 2.31 + 2 * 0.15);
        assertThat(info.times().get(AnalyticCast.FRAMES - 1))
                .isCloseTo(
                        AnalyticCast.seconds(AnalyticCast.FRAMES - 1) + added,
                        org.assertj.core.data.Offset.offset(1e-3));
        assertThat(info.times().get(60)).isCloseTo(AnalyticCast.seconds(60), org.assertj.core.data.Offset.offset(1e-3));
    }

    @Test
    void aScriptGetsOneLine() throws IOException {
        String line = SummaryJson.line(analysis, out);
        assertThat(line).doesNotContain("\n");
        var json = new com.fasterxml.jackson.databind.ObjectMapper().readTree(line);
        assertThat(json.path("format").asText()).isEqualTo("bendline-summary/1");
        assertThat(json.path("casts").path(0).path("next").asText()).isEqualTo("tip-dropped-early");
        assertThat(json.path("casts").path(0).path("cannot-tell").path(0).asText())
                .isEqualTo("soft-clip");
        assertThat(Path.of(json.path("report").asText())).exists();
    }
}
