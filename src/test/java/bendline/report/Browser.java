package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LoggingPreferences;

/** A headless browser, the one that the system has, that looks at pages as a reader would. */
final class Browser implements AutoCloseable {

    private static final List<Path> BROWSERS =
            paths("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");

    private static final List<Path> DRIVERS =
            paths("/usr/bin/chromedriver", "/usr/lib/chromium-browser/chromedriver", "/usr/lib/chromium/chromedriver");

    private final ChromeDriver driver;
    private final String look;

    private Browser(ChromeDriver driver, String look) {
        this.driver = driver;
        this.look = look;
    }

    private static List<Path> paths(String... names) {
        return Stream.of(names).map(Path::of).toList();
    }

    private static Optional<Path> first(List<Path> candidates) {
        return candidates.stream().filter(Files::isExecutable).findFirst();
    }

    /** Starts it; the test is skipped with a word where there is none. Nothing is downloaded. */
    static Browser start() throws IOException {
        Optional<Path> browser = first(BROWSERS);
        Optional<Path> driver = first(DRIVERS);
        assumeTrue(
                browser.isPresent() && driver.isPresent(),
                "no browser to look with; on Debian: apt-get install chromium chromium-driver");
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(driver.get().toFile())
                .usingAnyFreePort()
                .build();
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable("performance", Level.ALL);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.get().toFile());
        options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage");
        options.addArguments("--disable-background-networking", "--disable-component-update", "--no-first-run");
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriver chrome = new ChromeDriver(service, options);
        chrome.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
        try (InputStream in = Browser.class.getResourceAsStream("look.js")) {
            return new Browser(chrome, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    /** Opens a page in a window that wide, in light or dark, on a screen or for print. */
    void open(Path page, int width, boolean dark, boolean print) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", 900, "deviceScaleFactor", 1, "mobile", false));
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "media",
                        print ? "print" : "screen",
                        "features",
                        List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
        driver.manage().logs().get("performance");
        driver.get(page.toUri().toString());
    }

    /** Unfolds everything that is folded. */
    void unfold() {
        driver.executeScript("document.querySelectorAll('details').forEach(d => d.open = true)");
    }

    /** What is wrong with the open page by one of the checks of {@code look.js}; empty for nothing. */
    List<String> wrong(String check) {
        Object found = driver.executeScript(look + "\nreturn " + check + "();");
        List<String> out = new ArrayList<>();
        ((List<?>) found).forEach(f -> out.add(String.valueOf(f)));
        return out;
    }

    /** Addresses that the page asked for since it was opened, its own and what it holds itself left out. */
    List<String> asked() {
        return driver.manage().logs().get("performance").getAll().stream()
                .map(e -> e.getMessage())
                .filter(m -> m.contains("\"Network.requestWillBeSent\""))
                .map(m -> m.replaceAll("(?s).*\"request\":\\{.*?\"url\":\"([^\"]*)\".*", "$1"))
                .filter(u -> !u.startsWith("data:") && !u.endsWith("/report.html"))
                .toList();
    }

    /** Presses Tab until the focus is back at the start, and returns what it stood on. */
    List<String> tabbed(int most) {
        List<String> out = new ArrayList<>();
        driver.findElement(By.tagName("body"));
        for (int i = 0; i < most; i++) {
            new Actions(driver).sendKeys(Keys.TAB).perform();
            String here = (String)
                    driver.executeScript(
                            "const e = document.activeElement; const s = getComputedStyle(e);"
                                    + " return e.tagName + (s.outlineStyle === 'none' || parseFloat(s.outlineWidth) < 2 ? ' unseen' : '');");
            if (here.startsWith("BODY")) {
                break;
            }
            out.add(here);
        }
        return out;
    }

    /** Presses Enter on the first element that can be folded and says whether it opened. */
    boolean unfoldsByKey() {
        driver.executeScript("document.querySelector('summary').focus()");
        new Actions(driver).sendKeys(Keys.ENTER).perform();
        return Boolean.TRUE.equals(driver.executeScript("return document.querySelector('details').open"));
    }

    /** Checks that the checks themselves see something. */
    void spoil(String script) {
        assertThat(script).isNotBlank();
        driver.executeScript(script);
    }

    @Override
    public void close() {
        driver.quit();
    }
}
