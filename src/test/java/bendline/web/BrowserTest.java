package bendline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.Select;

/** From the clip on the phone to the corrected cast, in a real browser. The tests follow one another as a person would. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class BrowserTest extends AtTheBrowser {

    @Test
    @Order(1)
    void aClipGoesUpFromAPhoneThoughTheLineIsPoorAndThePageIsLeft() throws IOException {
        go("/");
        browser.isFitForAll("home");
        browser.size(360, 740, false);
        browser.driver.executeCdpCommand("Network.enable", Map.of());
        network(100_000);
        pick();
        browser.waitFor("/[1-9]\\d? % sent/.test(document.getElementById('sending').textContent)", PATIENCE_SECONDS);
        go("/");
        network(-1);
        assertThat(browser.find("main").getText()).contains("On their way").contains("good-cast.mp4");
        pick();
        browser.waitFor("location.pathname.startsWith('/clips/')", PATIENCE_SECONDS);
        clip = browser.driver.getCurrentUrl().replaceFirst(".*/clips/", "");
    }

    @Test
    @Order(2)
    void theAnalysisIsWatchedAndTheReportRead() throws IOException {
        browser.waitFor("document.getElementById('standing').dataset.state === 'done'", 300);
        browser.isFitForAll("clip");
        browser.size(360, 740, false);
        browser.find("a[href$='report.html']").click();
        browser.waitFor(
                "location.pathname.endsWith('report.html') && document.title.includes('good-cast.mp4')",
                PATIENCE_SECONDS);
        assertThat(browser.find("main").getText()).contains("Back to the clips");
        assertThat(browser.driver.executeScript("return getComputedStyle(document.body).margin"))
                .as("the report's own style holds")
                .isEqualTo("0px");
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
        browser.waitFor("Number(document.getElementById('at').value) > 3", PATIENCE_SECONDS);
        stage.sendKeys(" ");
        browser.waitFor("document.getElementById('play').textContent === 'Play'", PATIENCE_SECONDS);
        browser.driver.findElements(By.cssSelector("#moments button")).stream()
                .filter(b -> b.getText().contains("Line released"))
                .findFirst()
                .orElseThrow()
                .click();
        browser.waitFor(
                "document.getElementById('frame').complete && document.getElementById('frame').naturalWidth > 0",
                PATIENCE_SECONDS);
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
        followedAnew(version);
        assertThat(tipX()).as("obeyed to the pixel").isBetween(before + 2.8, before + 3.2);
        assertThat(browser.find("#talk").getText()).contains("tip moved").contains("you, 20");
        String corrected = version();
        browser.find("#undo").sendKeys(Keys.ENTER);
        browser.waitFor("document.getElementById('review').dataset.version !== '" + corrected + "'", PATIENCE_SECONDS);
        browser.waitFor("document.getElementById('talk').textContent.includes('taken back')", PATIENCE_SECONDS);
        browser.waitFor(
                "Math.abs(Number(document.querySelector('#over .o-tip').getAttribute('cx')) - " + before + ") < 1",
                PATIENCE_SECONDS);
    }

    @Test
    @Order(5)
    void aMomentIsMovedByKeyboardAndItIsToldWhoAndWhen() {
        browser.size(1440, 900, false);
        review();
        double before = release();
        String version = version();
        browser.driver.executeScript("document.querySelector('#curves .mark[data-id=backswingStart]').focus()");
        new Actions(browser.driver)
                .sendKeys(Keys.ARROW_DOWN, Keys.ARROW_DOWN, Keys.ARROW_UP, Keys.ARROW_RIGHT, Keys.ESCAPE)
                .perform();
        assertThat(version()).as("Escape leaves it").isEqualTo(version);
        browser.driver.executeScript("document.querySelector('#curves .mark[data-id=release]').focus()");
        new Actions(browser.driver)
                .sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ENTER)
                .perform();
        followedAnew(version);
        assertThat(release()).isEqualTo(before + 2);
        assertThat(browser.find("#talk").getText())
                .contains("Line released: put on this frame")
                .contains("you, 20");
    }

    @Test
    @Order(6)
    void onAPhoneAFingerMovesAMarkAndAMomentUndoTakesBackTheLastAndTheReportFollows() {
        browser.size(360, 740, false);
        review();
        browser.find("#at").sendKeys(Keys.HOME);
        browser.find("#stage").sendKeys(Keys.ARROW_UP, Keys.ARROW_UP, Keys.ARROW_UP);
        double before = tipX();
        String version = version();
        browser.finger("#over .o-tip", 24, 0);
        followedAnew(version);
        double scale = 640.0
                / ((Number) browser.driver.executeScript("return document.getElementById('stage').clientWidth"))
                        .doubleValue();
        assertThat(tipX()).as("as far as the finger went").isBetween(before + 23 * scale, before + 25 * scale);

        double release = release();
        String last = version();
        browser.finger("#curves .mark[data-id=release] rect", 12, 0);
        followedAnew(last);
        assertThat(release()).isGreaterThan(release);
        String then = version();
        browser.find("#undo").click();
        followedAnew(then);
        assertThat(release()).as("where it was put before").isEqualTo(release);
        browser.driver.executeScript("window.told = ''; setInterval(() => fetch('/clips/" + clip
                + "/report/analysis.json').then(r => r.text()).then(t => { window.told = t; }), 500)");
        browser.waitFor("window.told.includes('put on this frame by hand')", PATIENCE_SECONDS);
    }

    @Test
    @Order(7)
    void aMomentThatCannotBeThereIsRefusedWithAWord() {
        browser.size(1440, 900, false);
        review();
        new Select(browser.find("#which")).selectByValue("release");
        browser.find("#stage").sendKeys(Keys.HOME);
        browser.find("#put").sendKeys(Keys.ENTER);
        browser.waitFor(
                "document.getElementById('says').textContent.includes('move that one first')", PATIENCE_SECONDS);
    }

    @Test
    @Order(8)
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
        browser.waitFor("document.getElementById('talk').textContent.includes('Drill: Hand stays')", PATIENCE_SECONDS);
        review();
        browser.find(".talk .moment").click();
        assertThat(browser.driver.executeScript("return document.querySelectorAll('#over .o-line').length"))
                .isEqualTo(1L);
        browser.find("#talk summary").click();
        browser.find("#talk textarea").sendKeys("Tried it ten times.");
        browser.find("#talk textarea").submit();
        browser.waitFor(
                "document.getElementById('talk').textContent.includes('Tried it ten times.')", PATIENCE_SECONDS);
    }

    @Test
    @Order(9)
    void anAngleIsDrawnByKeyboardAndReadOff() {
        review();
        browser.find("#angle").sendKeys(Keys.ENTER);
        WebElement stage = browser.find("#stage");
        stage.sendKeys(Keys.ENTER);
        for (int i = 0; i < 4; i++) {
            stage.sendKeys(Keys.chord(Keys.SHIFT, Keys.ARROW_DOWN));
        }
        stage.sendKeys(Keys.ENTER);
        for (int i = 0; i < 4; i++) {
            stage.sendKeys(Keys.chord(Keys.SHIFT, Keys.ARROW_RIGHT));
        }
        stage.sendKeys(Keys.ENTER);
        assertThat(says()).startsWith("An angle of 90°");
        browser.find("#words").sendKeys("Wrist opens here.");
        browser.find("#words").submit();
        browser.waitFor(
                "document.getElementById('talk').textContent.includes('with an angle of 90°')", PATIENCE_SECONDS);
    }

    @Test
    @Order(10)
    void twoCastsAreHeldAgainstEachOther() throws IOException {
        new Copies(temp.resolve("book"), clip).add();
        go("/compare");
        browser.isFitForAll("compare");
        browser.size(360, 740, false);
        List<WebElement> sides = browser.driver.findElements(By.cssSelector("fieldset.pair"));
        assertThat(sides).hasSize(2);
        sides.get(0).findElement(By.cssSelector("input[value=A]")).sendKeys(" ");
        sides.get(1).findElement(By.cssSelector("input[value=B]")).sendKeys(" ");
        browser.find("form.tall button").sendKeys(Keys.ENTER);
        browser.waitFor("document.getElementById('says').textContent === 'At the release'", PATIENCE_SECONDS);
        browser.find("#on").sendKeys(Keys.ENTER);
        assertThat(says()).isEqualTo("0.02 s after the release");
        assertThat(browser.driver.executeScript("return document.querySelectorAll('.lay .o-blank').length"))
                .isEqualTo(2L);
        assertThat(browser.find("table.measured").getText())
                .as("the same cast twice")
                .contains("B − A: +0.00 ± 0.")
                .doesNotContain("B − A: −");
        browser.isFitForAll("pair");
    }

    @Test
    @Order(11)
    void twoSetsAreHeldAgainstEachOtherWithWhatTheBookKnowsOfThem() throws IOException {
        Copies copies = new Copies(temp.resolve("book"), clip);
        for (int i = 0; i < 2; i++) {
            copies.add("calm day", 1, "Heron 360");
            copies.add("windy day", 4, "Heron 390");
        }
        go("/compare");
        browser.size(1440, 900, false);
        for (WebElement pair : browser.driver.findElements(By.cssSelector("fieldset.pair"))) {
            String side = pair.getText().contains("calm") ? "A" : pair.getText().contains("windy") ? "B" : "neither";
            pair.findElement(By.cssSelector("input[value=" + side + "]")).sendKeys(" ");
        }
        browser.find("form.tall button").sendKeys(Keys.ENTER);
        browser.waitFor("location.pathname.endsWith('comparison.html')", 120);
        assertThat(browser.find("main").getText())
                .contains("Back to the clips", "What else changed", "4.0 m/s from 180°", "Heron 390")
                .containsPattern("A by calm day/\\d, B by windy day/\\d");
        browser.isFitForAPhone("comparison");
        browser.find("nav[aria-label='Way back'] a").click();
        browser.waitFor("location.pathname === '/compare'", PATIENCE_SECONDS);
    }

    @Test
    @Order(12)
    void pupilsSeeTheirOwnClipsAndACoachSeesAll() throws IOException, InterruptedException {
        served.close();
        served = new Served(temp.resolve("book"), "--club");
        Club club = new Club(browser, served);
        String coach = club.join(club.firstInvitation(), "Ada Weir");
        String ben = club.join(club.invitation(), "Ben Sluice");
        club.signIn(coach);
        String second = club.invitation();
        browser.isFitForAPhone("club");
        String cleo = club.join(second, "Cleo Reed");
        new Copies(temp.resolve("book"), clip).belongsTo("Ben Sluice");

        club.signIn(cleo);
        go("/");
        assertThat(browser.find("main").getText()).doesNotContain("good-cast.mp4");
        go("/clips/" + clip + "/review");
        assertThat(browser.find("main").getText()).contains("isn't shared with you");

        club.signIn(coach);
        review();
        browser.find("#words").sendKeys("Ten slow ones.");
        browser.find("form.note input[name=drill]").click();
        browser.find("#words").submit();
        browser.waitFor(
                "document.getElementById('talk').textContent.includes('Drill: Ten slow ones.')", PATIENCE_SECONDS);

        club.signIn(ben);
        review();
        browser.driver.findElements(By.cssSelector("#talk button")).stream()
                .filter(b -> b.getText().equals("Drill done"))
                .findFirst()
                .orElseThrow()
                .sendKeys(Keys.ENTER);
        browser.waitFor("document.getElementById('talk').textContent.includes('Done on 20')", PATIENCE_SECONDS);
        go("/clips/" + clip);
        browser.isFitForAPhone("clip-of-a-pupil");
        browser.driver.findElements(By.cssSelector("form.inline button")).stream()
                .filter(b -> b.getText().equals("Share with Cleo Reed"))
                .findFirst()
                .orElseThrow()
                .sendKeys(Keys.ENTER);
        browser.waitFor(
                "document.querySelector('main').textContent.includes('Stop sharing with Cleo')", PATIENCE_SECONDS);

        club.signIn(cleo);
        review();
        assertThat(browser.find("#talk").getText()).contains("Ten slow ones.", "Ada Weir");
        assertThat(browser.driver.findElements(By.cssSelector("#move, #put, #undo, #talk .quiet:not(.moment)")))
                .as("looks, but does not correct")
                .isEmpty();
    }
}
