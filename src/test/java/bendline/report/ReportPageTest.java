package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.ClipAnalysis;
import bendline.stroke.Event;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ReportPageTest {

    private static final byte[] ANY_BYTES = {1, 2, 3};

    private static final ClipAnalysis CAST = AnalyticCast.analysis(Path.of("clip.mp4"));
    private static final String PAGE = page(CAST);

    private static String page(ClipAnalysis analysis) {
        Map<Integer, Still> stills = new TreeMap<>();
        analysis.casts().forEach(c -> {
            Stream.concat(
                            c.stroke().events().values().stream()
                                    .map(Event::frame)
                                    .filter(f -> f != null),
                            c.review().findings().stream().flatMap(f -> f.evidenceFrames().stream()))
                    .forEach(f -> stills.put(
                            f, new Still(f, AnalyticCast.seconds(f), "frames/x.png", ANY_BYTES, 680, 400, "A frame.")));
        });
        Map<Integer, List<CastCharts.Chart>> charts = new TreeMap<>();
        analysis.casts().forEach(c -> charts.put(c.stroke().number(), new CastCharts(analysis, c.stroke()).draw()));
        return new ReportPage(analysis, stills, charts).write();
    }

    @Test
    void severalCastsShareOneFirstHeadingAndTheirPartsStandOneLevelDeeper() {
        String page = page(TwoCasts.analysis(Path.of("clip.mp4")));
        assertThat(all(page, "<h1[^>]*>([^<]*)")).containsExactly("2 casts in this clip");
        assertThat(all(page, "<h2[^>]*class=\"headline\">([^<]*)")).hasSize(2);
        assertThat(page).contains("<h3>The stroke, moment by moment</h3>");
        List<String> ids = all(page, "\\sid=[\"']([^\"']+)[\"']");
        assertThat(ids).doesNotHaveDuplicates().containsAll(all(page, "href=\"#([^\"]+)\""));
    }

    @Test
    void whatAnswersASecondQuestionIsFoldedAway() {
        assertThat(all(PAGE, "<summary><h[23]>([^<]*)"))
                .containsExactly(
                        "What the blank carried",
                        "The whole cast",
                        "Not there: 1",
                        "Cannot tell: 1, and why",
                        "Measured: 4 numbers",
                        "What could not be told, and why: 2",
                        "How this was worked out");
    }

    private static List<String> all(String page, String pattern) {
        return Pattern.compile(pattern)
                .matcher(page)
                .results()
                .map((MatchResult m) -> m.group(1))
                .toList();
    }

    @Test
    void theTopSaysWhatHowSureAndWhatNextBeforeAnythingElse() {
        List<Integer> places = Stream.of(
                        "<h1 id=\"cast1-head\" class=\"headline\">The tip was dropped too early</h1>",
                        "<img",
                        "The rod falls far under its held angle.",
                        "Do this next",
                        "Cast at half power",
                        "How sure",
                        "The stroke, moment by moment",
                        "How the blank bent",
                        ">What was looked for</h2>",
                        "What was good",
                        "Measured",
                        "What could not be told, and why",
                        "How the clip was filmed, and what to change",
                        "Before you try it",
                        "How this was worked out")
                .map(PAGE::indexOf)
                .toList();
        assertThat(places).doesNotContain(-1).isSorted();
    }

    @Test
    void whatCouldNotBeToldStandsWithItsReason() {
        assertThat(PAGE)
                .contains("<dt>Line tight on the clip</dt>\n<dd>the clip ends before the line could come tight</dd>")
                .contains("<dt>Drop</dt>\n<dd>the rig was not seen hanging still</dd>");
    }

    @Test
    void aFindingShowsItsNumberAgainstItsLimitAndItsFrames() {
        String finding =
                PAGE.substring(PAGE.indexOf("id=\"cast1-tip-dropped-early\""), PAGE.indexOf("id=\"cast1-flat"));
        assertThat(finding)
                .contains("Found, strong", "25.0\u00a0±\u00a00.9°, a fault above 12°; speaks for it", "Frame 166")
                .contains("What it costs", "Drill");
    }

    @Test
    void everyPictureHasWordsAndNoNetwork() {
        List<String> pictures = all(PAGE, "<img ([^>]*)>");
        assertThat(pictures)
                .hasSizeGreaterThan(10)
                .allSatisfy(p -> assertThat(p)
                        .contains("src=\"data:image/jpeg;base64,")
                        .containsPattern("alt=\"[^\"]{10,}\"")
                        .containsPattern("width=\"\\d+\" height=\"\\d+\""));
        assertThat(all(PAGE, "<svg ([^>]*)>"))
                .allSatisfy(s -> assertThat(s).containsAnyOf("role=\"img\"", "aria-hidden=\"true\""));
    }

    @Test
    void namesOnThePageAreUniqueAndLinksHitThem() {
        List<String> ids = all(PAGE, "\\sid=[\"']([^\"']+)[\"']");
        assertThat(ids).doesNotHaveDuplicates();
        Set<String> known = new HashSet<>(ids);
        assertThat(known).containsAll(all(PAGE, "href=\"#([^\"]+)\"")).containsAll(all(PAGE, "url\\(#([^)]+)\\)"));
    }

    @Test
    void chartsInThePageTakeTheirColoursFromTheStyleSheet() {
        assertThat(all(PAGE, "((?:fill|stroke): ?rgb\\([^)]*\\))")).isEmpty();
    }

    @Test
    void aHostileFileNameStaysText() {
        String page = page(AnalyticCast.analysis(Path.of("<img src=x onerror=alert(1)>\"&.mp4")));
        assertThat(page).doesNotContain("<img src=x").contains("&lt;img src=x onerror=alert(1)&gt;&quot;&amp;.mp4");
    }

    @Test
    void thePageReadsTheSameWhereverItIsWritten() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertThat(page(CAST)).isEqualTo(PAGE);
            Locale.setDefault(Locale.GERMANY);
            assertThat(page(CAST)).isEqualTo(PAGE);
        } finally {
            Locale.setDefault(before);
        }
    }
}
