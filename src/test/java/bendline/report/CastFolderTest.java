package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bendline.analysis.ClipAnalysis;
import bendline.analysis.Progress;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.FootageException;
import bendline.footage.PictureReader;
import bendline.image.VideoPlanes;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CastFolderTest {

    @TempDir
    private static Path temp;

    private static Path out;

    @BeforeAll
    static void writeOnce() throws IOException {
        Path clip = AnalyticCast.render(temp.resolve("Öse & „Test“.mp4"));
        out = temp.resolve("out");
        new CastFolder().write(AnalyticCast.analysis(clip), out, Progress.SILENT);
    }

    @Test
    void holdsWhatTheReadmePromises() throws IOException {
        assertThat(names(out))
                .containsExactly(
                        "analysis.json", "charts", "curves.csv", "frames", "frames.csv", "marked.mp4", "report.html");
        assertThat(names(out.resolve("charts")))
                .containsExactly(
                        "cast1-bend.csv",
                        "cast1-bend.svg",
                        "cast1-forward-stroke.csv",
                        "cast1-forward-stroke.svg",
                        "cast1-load.csv",
                        "cast1-load.svg",
                        "cast1-whole-cast.csv",
                        "cast1-whole-cast.svg");
        assertThat(names(out.resolve("frames")))
                .contains("cast1-forwardStart-00138.png", "cast1-stop-release-00156.png", "cast1-00166.png");
    }

    @Test
    void theMarkedClipKeepsEveryFrameAndItsTime() {
        ClipInfo info = Footage.open(out.resolve("marked.mp4")).survey(f -> {});
        assertThat(info.frames()).isEqualTo(AnalyticCast.FRAMES);
        assertThat(info.width()).isEqualTo(AnalyticCast.WIDTH);
        assertThat(info.height()).isGreaterThan(AnalyticCast.HEIGHT);
        ClipInfo was = Footage.open(temp.resolve("Öse & „Test“.mp4")).survey(f -> {});
        for (int frame = 0; frame < info.frames(); frame++) {
            // To the tick of 1/90000 s of either file, over the joins of the groups of pictures too.
            assertThat(info.times().get(frame))
                    .as("frame %d", frame)
                    .isCloseTo(was.times().get(frame), org.assertj.core.data.Offset.offset(2e-5));
        }
    }

    @Test
    void theMarkedClipKeepsThePixelsThatNobodyDrewOn() {
        int corner = AnalyticCast.WIDTH / 8;
        try (PictureReader was = Footage.open(temp.resolve("Öse & „Test“.mp4")).pictures();
                PictureReader is = Footage.open(out.resolve("marked.mp4")).pictures()) {
            for (int frame = 0; frame < AnalyticCast.FRAMES; frame++) {
                was.advance();
                is.advance();
                if (frame % 40 == 0) {
                    // What the coder alone loses; above 40 dB a still is hard to tell from its original (common
                    // practice, no source).
                    assertThat(peakToNoise(planes(was), planes(is), corner))
                            .as("frame %d", frame)
                            .isGreaterThan(40);
                }
            }
        }
    }

    private static VideoPlanes planes(PictureReader reader) {
        VideoPlanes planes = reader.planes();
        return planes == null ? reader.picture().planes() : planes;
    }

    /** Of the brightness in the upper left corner. */
    private static double peakToNoise(VideoPlanes one, VideoPlanes other, int side) {
        double sum = 0;
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                double d = (one.luma()[y * one.width() + x] & 255) - (other.luma()[y * other.width() + x] & 255);
                sum += d * d;
            }
        }
        return 10 * Math.log10(255 * 255 / Math.max(1e-3, sum / side / side));
    }

    @Test
    void stillsAreCutAroundAnglerAndRod() throws IOException {
        try (Stream<Path> stills = Files.list(out.resolve("frames"))) {
            for (Path still : stills.toList()) {
                BufferedImage image = ImageIO.read(still.toFile());
                assertThat(image.getWidth()).isGreaterThanOrEqualTo(680);
                assertThat(image.getHeight()).isLessThan(image.getWidth());
            }
        }
    }

    @Test
    void chartsAreSoundXmlWithTextInIt() throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        for (String name : names(out.resolve("charts")).stream()
                .filter(n -> n.endsWith(".svg"))
                .toList()) {
            var document = factory.newDocumentBuilder()
                    .parse(out.resolve("charts").resolve(name).toFile());
            assertThat(document.getElementsByTagName("text").getLength())
                    .as(name)
                    .isGreaterThan(10);
            assertThat(document.getDocumentElement().getAttribute("role")).isEqualTo("img");
        }
    }

    @Test
    void theFiguresOfAChartStandBesideItAndAreThoseOfTheFormulas() throws IOException {
        List<String> rows = Files.readAllLines(out.resolve("charts/cast1-whole-cast.csv"));
        assertThat(rows.get(0)).isEqualTo("line,seconds,value,plus_minus");
        String atTwoSeconds = rows.stream()
                .filter(r -> r.startsWith("\"Butt angle, °\",2,"))
                .findFirst()
                .orElseThrow();
        double degrees = Double.parseDouble(atTwoSeconds.split(",")[3]);
        assertThat(degrees)
                .isCloseTo(Math.toDegrees(AnalyticCast.buttAngle(2)), org.assertj.core.data.Offset.offset(1e-4));
        assertThat(rows).noneMatch(r -> r.contains("NaN"));
    }

    @Test
    void thePageNeedsNothingFromOutside() throws IOException {
        String page = Files.readString(out.resolve("report.html"));
        assertThat(page).doesNotContain("<script", "<link", "@import", "<iframe", "url(http");
        assertThat(page.replace("http://www.w3.org/", ""))
                .as("no address but name spaces")
                .doesNotContain("http:", "https:");
        assertThat(page).contains("<title>Öse &amp; „Test“.mp4 – Bendline</title>");
        assertThat(page.length()).as("small enough to send").isLessThan(2_000_000);
    }

    @Test
    void aWriteThatFailsHalfWayLeavesNothing() throws IOException {
        ClipAnalysis lost = AnalyticCast.analysis(temp.resolve("gone.mp4"));
        Path target = temp.resolve("failed/report");
        assertThatThrownBy(() -> new CastFolder().write(lost, target, Progress.SILENT))
                .isInstanceOf(FootageException.class);
        assertThat(names(temp.resolve("failed"))).isEmpty();
    }

    @Test
    void aClipWithoutACastGetsAPageThatSaysSo() throws IOException {
        Path clip = temp.resolve("Öse & „Test“.mp4");
        Path folder = temp.resolve("nocast");
        new CastFolder().write(AnalyticCast.withoutCast(clip), folder, Progress.SILENT);
        assertThat(folder.resolve("report.html"))
                .content()
                .contains("No cast found in this clip", "no thin line moves with the hands", "Film one whole cast");
        assertThat(names(folder.resolve("frames"))).containsExactly("00120.png");
        assertThat(names(folder.resolve("charts"))).isEmpty();
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }
}
