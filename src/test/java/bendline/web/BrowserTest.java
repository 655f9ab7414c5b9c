package bendline.web;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.book.Clip;
import bendline.book.Entry;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.Select;

/** From the clip on the phone to the corrected cast, in a real browser. The tests follow one another as a person would. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class BrowserTest {

    @TempDir
    private static Path temp;

    private static Browser browser;
    private static Served served;
    private static Path film;
    private static String clip;

    @BeforeAll
    static void open() throws IOException {
        browser = Browser.start();
        film = SmallClip.write(Path.of("samples/good-cast.mp4"), temp.resolve("good-cast.mp4"));
        served = new Served(temp.resolve("book"));
    }

    @AfterAll
    static void close() throws InterruptedException {
        if (served != null) {
            served.close();
        }
        if (browser != null) {
            browser.close();
        }
    }

    private static void go(String path) {
        browser.driver.get(served.address + path);
    }

    private static void pick() {
        browser.find("#pick").sendKeys(film.toString());
    }

    private static void network(int bytesPerSecond) {
        browser.driver.executeCdpCommand(
                "Network.emulateNetworkConditions",
                Map.of("offline", false, "latency", 0, "downloadThroughput", -1, "uploadThroughput", bytesPerSecond));
    }

    @Test
    @Order(1)
    void aClipGoesUpFromAPhoneThoughTheLineIsPoorAndThePageIsLeft() throws IOException {
        go("/");
        browser.isFitForAll("home");
        browser.size(360, 740, false);
        browser.driver.executeCdpCommand("Network.enable", Map.of());
        network(100_000);
        pick();
        browser.waitFor("/[1-9]\\d? % sent/.test(document.getElementById('sending').textContent)", 30);
        go("/");
        network(-1);
        assertThat(browser.find("main").getText()).contains("On their way").contains("good-cast.mp4");
        pick();
        browser.waitFor("location.pathname.startsWith('/clips/')", 30);
        clip = browser.driver.getCurrentUrl().replaceFirst(".*/clips/", "");
    }

    @Test
    @Order(2)
    void theAnalysisIsWatchedAndTheReportRead() throws IOException {
        browser.waitFor("document.getElementById('standing').dataset.state === 'done'", 300);
        browser.isFitForAll("clip");
        browser.size(360, 740, false);
        browser.find("a[href$='report.html']").click();
        browser.waitFor("location.pathname.endsWith('report.html') && document.title.includes('.mp4')", 20);
        assertThat(browser.find("main").getText()).contains("Back to the clips");
        assertThat(browser.driver.executeScript("return getComputedStyle(document.body).margin"))
                .as("the report's own style holds")
                .isEqualTo("0px");
    }

    private static void review() {
        go("/clips/" + clip + "/review");
        browser.waitFor("document.getElementById('says').textContent.startsWith('Frame 0')", 20);
        browser.waitFor("document.getElementById('review').dataset.version !== undefined", 20);
    }

    private static String says() {
        return browser.find("#says").getText();
    }

    @Test
    @Order(3)
    void framesAreSteppedExactlyByKeyWheelSwipeAndSlider() throws IOException {
        review();
        WebElement stage = browser.find("#stage");
        stage.sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_LEFT);
        assertThat(says()).startsWith("Frame 1 ");
        stage.sendKeys(Keys.ARROW_UP);
        assertThat(says()).startsWith("Frame 11 ");
        browser.driver.executeScript(
                "arguments[0].dispatchEvent(new WheelEvent('wheel', {deltaY: 5, cancelable: true}))", stage);
        assertThat(says()).startsWith("Frame 12 ");
        new Actions(browser.driver)
                .moveToElement(stage, -80, 60)
                .clickAndHold()
                .moveByOffset(60, 0)
                .release()
                .perform();
        assertThat(says()).startsWith("Frame 17 ");
        browser.find("#at").sendKeys(Keys.HOME);
        assertThat(says()).startsWith("Frame 0 ");
        new Select(browser.find("#speed")).selectByValue("1");
        stage.sendKeys(" ");
        browser.waitFor("Number(document.getElementById('at').value) > 3", 20);
        stage.sendKeys(" ");
        browser.waitFor("document.getElementById('play').textContent === 'Play'", 10);
        browser.driver.findElements(By.cssSelector("#moments button")).stream()
                .filter(b -> b.getText().contains("Line released"))
                .findFirst()
                .orElseThrow()
                .click();
        browser.waitFor(
                "document.getElementById('frame').complete && document.getElementById('frame').naturalWidth > 0", 10);
        assertThat(browser.driver.executeScript("return document.querySelectorAll('#over .o-blank').length"))
                .as("the blank lies over the picture")
                .isEqualTo(1L);
        browser.isFitForAll("review");
    }

    @Test
    @Order(4)
    void aMarkIsMovedByKeyboardTheRodIsFollowedAnewAndItIsTakenBack() {
        browser.size(1440, 900, false);
        review();
        WebElement stage = browser.find("#stage");
        for (int i = 0; i < 3; i++) {
            stage.sendKeys(Keys.ARROW_UP);
        }
        double before = tipX();
        String version = version();
        browser.find("#move").sendKeys(Keys.ENTER);
        stage.sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ENTER);
        browser.waitFor("document.getElementById('review').dataset.version !== '" + version + "'", 60);
        browser.waitFor("document.getElementById('says').textContent === 'Followed anew.'", 20);
        assertThat(tipX()).as("obeyed to the pixel").isBetween(before + 2.8, before + 3.2);
        assertThat(browser.find("#talk").getText()).contains("tip moved").contains("you, 20");
        String corrected = version();
        browser.find("#undo").sendKeys(Keys.ENTER);
        browser.waitFor("document.getElementById('review').dataset.version !== '" + corrected + "'", 60);
        browser.waitFor("document.getElementById('talk').textContent.includes('taken back')", 20);
        browser.waitFor(
                "Math.abs(Number(document.querySelector('#over .o-tip').getAttribute('cx')) - " + before + ") < 1", 20);
    }

    private static String version() {
        return browser.find("#review").getAttribute("data-version");
    }

    private static double tipX() {
        return Double.parseDouble(browser.find("#over .o-tip").getAttribute("cx"));
    }

    @Test
    @Order(5)
    void aNoteWithALineIsKeptAndAnswered() {
        browser.size(1440, 900, false);
        review();
        browser.find("#draw").click();
        new Actions(browser.driver)
                .moveToElement(browser.find("#stage"), -100, 0)
                .clickAndHold()
                .moveByOffset(150, 40)
                .release()
                .perform();
        browser.find("#words").sendKeys("Hand stays under this line.");
        browser.find("form.note input[name=drill]").click();
        browser.find("#words").submit();
        browser.waitFor("document.getElementById('talk').textContent.includes('Drill: Hand stays')", 10);
        review();
        browser.find(".talk .moment").click();
        assertThat(browser.driver.executeScript("return document.querySelectorAll('#over .o-line').length"))
                .isEqualTo(1L);
        browser.find("#talk summary").click();
        browser.find("#talk textarea").sendKeys("Tried it ten times.");
        browser.find("#talk textarea").submit();
        browser.waitFor("document.getElementById('talk').textContent.includes('Tried it ten times.')", 10);
    }

    @Test
    @Order(6)
    void twoCastsAreHeldAgainstEachOther() throws IOException {
        secondCast();
        go("/compare");
        browser.isFitForAll("compare");
        browser.size(360, 740, false);
        List<WebElement> sides = browser.driver.findElements(By.cssSelector("fieldset.pair"));
        assertThat(sides).hasSize(2);
        sides.get(0).findElement(By.cssSelector("input[value=A]")).sendKeys(" ");
        sides.get(1).findElement(By.cssSelector("input[value=B]")).sendKeys(" ");
        browser.find("form.tall button").sendKeys(Keys.ENTER);
        browser.waitFor("document.getElementById('says').textContent === 'At the release'", 20);
        browser.find("#on").sendKeys(Keys.ENTER);
        assertThat(says()).isEqualTo("0.02 s after the release");
        assertThat(browser.driver.executeScript("return document.querySelectorAll('.lay .o-blank').length"))
                .isEqualTo(2L);
        browser.isFitForAll("pair");
    }

    /** A second cast in the book, written down beside the running server; its analysis is a copy, which saves analysing another. */
    private static void secondCast() throws IOException {
        PracticeBook book = PracticeBook.open(temp.resolve("book"));
        Entry first = book.entries(Selection.ALL).get(0);
        Path other = Files.write(temp.resolve("other.mp4"), new byte[] {1, 2, 3});
        Clip kept = book.keep(other);
        book.add(Desk.plain(first.session().id(), kept.id(), 1, null, null));
        String place = book.placeForAnalysis();
        copy(book.file(first.analysis().folder()), book.file(place));
        copy(book.file("cache/frames/" + clip), book.file("cache/frames/" + kept.id()));
        book.analysed(kept, "copied", place, 1);
        Files.copy(book.file("cache/followed/" + clip + ".json"), book.file("cache/followed/" + kept.id() + ".json"));
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> walk = Files.walk(from)) {
            for (Path p : walk.toList()) {
                Files.copy(p, to.resolve(from.relativize(p).toString()));
            }
        }
    }
}
