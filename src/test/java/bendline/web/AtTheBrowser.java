package bendline.web;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;

/** A browser, a server and a small clip, and what a person does and reads on the page of a clip again and again. */
abstract class AtTheBrowser {

    /** A busy machine with two cores: waiting ends with what is waited for, so that patience costs nothing. */
    static final int PATIENCE_SECONDS = 90;

    @TempDir
    static Path temp;

    static Browser browser;
    static Served served;
    static Path film;
    static String clip;

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

    static void go(String path) {
        browser.driver.get(served.address + path);
    }

    static void pick() {
        browser.find("#pick").sendKeys(film.toString());
    }

    static void network(int bytesPerSecond) {
        browser.driver.executeCdpCommand(
                "Network.emulateNetworkConditions",
                Map.of("offline", false, "latency", 0, "downloadThroughput", -1, "uploadThroughput", bytesPerSecond));
    }

    static void review() {
        go("/clips/" + clip + "/review");
        // Not by what is said: while a report is written anew the page says so in place of its frame.
        browser.waitFor("document.getElementById('over').hasAttribute('viewBox')", PATIENCE_SECONDS);
        browser.waitFor("document.getElementById('review').dataset.version !== undefined", PATIENCE_SECONDS);
    }

    static String says() {
        return browser.find("#says").getText();
    }

    static String version() {
        return browser.find("#review").getAttribute("data-version");
    }

    static double tipX() {
        return Double.parseDouble(browser.find("#over .o-tip").getAttribute("cx"));
    }

    static double release() {
        return Double.parseDouble(browser.find("#curves .mark[data-id=release]").getAttribute("aria-valuenow"));
    }

    static void followedAnew(String since) {
        // What is said then may already be that the report is written.
        browser.waitFor(
                "(d => d !== undefined && d !== '" + since + "')(document.getElementById('review').dataset.drawn)",
                PATIENCE_SECONDS);
    }
}
