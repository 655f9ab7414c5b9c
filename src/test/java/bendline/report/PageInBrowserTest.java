package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.Progress;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report as a browser shows it: WCAG 2.2 AA where a program can tell, and what an eye would trip over. */
class PageInBrowserTest {

    /** 182 mm between the margins of A4, in pixels of a style sheet. */
    private static final int A4 = 688;

    private static final List<String> LOOKS = List.of("overflow", "overlaps", "small", "contrast", "lines");

    @TempDir
    private static Path temp;

    private static Browser browser;
    private static Path one;
    private static Path two;

    @BeforeAll
    static void start() throws IOException {
        browser = Browser.start();
        Path clip = AnalyticCast.render(temp.resolve("evening session.mp4"));
        one = page("one", clip, 1);
        two = page("two", clip, 2);
    }

    private static Path page(String name, Path clip, int casts) throws IOException {
        Path out = temp.resolve(name);
        new CastFolder()
                .write(casts == 1 ? AnalyticCast.analysis(clip) : TwoCasts.analysis(clip), out, Progress.SILENT);
        return out.resolve("report.html");
    }

    @AfterAll
    static void stop() {
        if (browser != null) {
            browser.close();
        }
    }

    @Test
    void nothingSticksOutOverlapsOrIsHardToReadAtAnyWidthInLightAndDark() {
        for (Path page : List.of(one, two)) {
            for (int width : new int[] {360, 768, 1440}) {
                for (boolean dark : new boolean[] {false, true}) {
                    browser.open(page, width, dark, false);
                    browser.unfold();
                    assertThat(wrong())
                            .as("%s at %d px, dark: %s", page, width, dark)
                            .isEmpty();
                }
            }
        }
    }

    @Test
    void paperShowsWhatIsFoldedAndIsLightAlsoForThoseWhoReadInTheDark() {
        browser.open(two, A4, true, true);
        assertThat(wrong()).isEmpty();
        assertThat(browser.wrong("unfolded")).isEmpty();
    }

    @Test
    void everyPictureLoadsAndNoRequestLeavesThePage() {
        for (Path page : List.of(one, two)) {
            browser.open(page, 768, false, false);
            assertThat(browser.wrong("pictures")).isEmpty();
            assertThat(browser.wrong("headings")).isEmpty();
            assertThat(browser.asked()).isEmpty();
        }
    }

    @Test
    void everythingCanBeReachedAndOpenedWithKeys() {
        browser.open(one, 360, false, false);
        List<String> stops = browser.tabbed(40);
        assertThat(stops).contains("A", "SUMMARY", "DIV").noneMatch(s -> s.endsWith("unseen"));
        assertThat(browser.unfoldsByKey()).isTrue();
    }

    @Test
    void theChecksSeeWhatIsWrong() {
        browser.open(one, 360, false, false);
        browser.spoil("const b = document.createElement('p'); b.textContent = 'wide'; b.style.width = '900px';"
                + " b.style.font = '8px serif'; b.style.color = '#bbb'; b.style.marginBottom = '-8px'; b.style.lineHeight = '8px';"
                + " document.querySelector('main').append(b);"
                + " const c = document.createElement('p'); c.textContent = 'over'; c.style.lineHeight = '8px';"
                + " document.querySelector('main').append(c);"
                + " document.documentElement.style.setProperty('--tip', '#ddd');"
                + " document.images[0].src = 'https://nowhere.invalid/x.png';");
        assertThat(LOOKS)
                .allSatisfy(look -> assertThat(browser.wrong(look)).as(look).isNotEmpty());
        assertThat(browser.wrong("pictures")).isNotEmpty();
    }

    private static List<String> wrong() {
        return LOOKS.stream().flatMap(l -> browser.wrong(l).stream()).toList();
    }

    @Test
    void thePageWithoutACastHoldsToTheSame() throws IOException {
        Path out = temp.resolve("none");
        Path clip = temp.resolve("evening session.mp4");
        new CastFolder().write(AnalyticCast.withoutCast(clip), out, Progress.SILENT);
        browser.open(out.resolve("report.html"), 360, false, false);
        assertThat(Stream.concat(wrong().stream(), browser.wrong("headings").stream()))
                .isEmpty();
    }
}
