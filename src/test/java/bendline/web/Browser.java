package bendline.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptException;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.Rectangle;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Chromium without a screen, as Debian packages it. */
final class Browser implements AutoCloseable {

    final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** Starts one; where none is installed the test is skipped, unless {@code BENDLINE_BROWSER=required}. */
    static Browser start() {
        Optional<Path> browser = found("chromium");
        Optional<Path> driver = found("chromedriver");
        boolean required = "required".equals(System.getenv("BENDLINE_BROWSER"));
        if (!required) {
            Assumptions.assumeTrue(
                    browser.isPresent() && driver.isPresent(),
                    "No browser to test pages with; install one, on Debian: apt-get install chromium chromium-driver");
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.orElseThrow().toFile());
        options.addArguments("--headless=new", "--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu");
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(driver.orElseThrow().toFile())
                .build();
        return new Browser(new ChromeDriver(service, options));
    }

    private static Optional<Path> found(String name) {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .map(folder -> Path.of(folder, name))
                .filter(Files::isExecutable)
                .findFirst();
    }

    void size(int width, int height, boolean dark) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    WebElement find(String css) {
        return new WebDriverWait(driver, Duration.ofSeconds(30))
                .until(d ->
                        d.findElements(By.cssSelector(css)).stream().findFirst().orElse(null));
    }

    void waitFor(String script, int seconds) {
        new WebDriverWait(driver, Duration.ofSeconds(seconds), Duration.ofMillis(100))
                .withMessage(script)
                // Between two pages what is asked for is not there yet.
                .ignoring(JavascriptException.class)
                .until(d -> Boolean.TRUE.equals(driver.executeScript("return " + script)));
    }

    /** A finger that is put down in the middle of something, drawn across the screen and lifted. */
    void finger(String css, int dx, int dy) {
        WebElement on = find(css);
        driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", on);
        Rectangle box = onScreen(on);
        PointerInput finger = new PointerInput(PointerInput.Kind.TOUCH, "finger");
        Sequence drag = new Sequence(finger, 0);
        int x = box.x + box.width / 2;
        int y = box.y + box.height / 2;
        drag.addAction(finger.createPointerMove(Duration.ZERO, PointerInput.Origin.viewport(), x, y));
        drag.addAction(finger.createPointerDown(PointerInput.MouseButton.LEFT.asArg()));
        for (int i = 1; i <= 4; i++) {
            drag.addAction(finger.createPointerMove(
                    Duration.ofMillis(20), PointerInput.Origin.viewport(), x + dx * i / 4, y + dy * i / 4));
        }
        drag.addAction(finger.createPointerUp(PointerInput.MouseButton.LEFT.asArg()));
        driver.perform(List.of(drag));
    }

    private Rectangle onScreen(WebElement e) {
        List<?> b = (List<?>) driver.executeScript(
                "const b = arguments[0].getBoundingClientRect(); return [b.x, b.y, b.width, b.height].map(Math.round)",
                e);
        int[] n = b.stream().mapToInt(v -> ((Number) v).intValue()).toArray();
        return new Rectangle(n[0], n[1], n[3], n[2]);
    }

    /** Nothing serious on a phone, and nothing sticks out at the side. */
    void isFitForAPhone(String name) throws IOException {
        size(360, 740, false);
        look(name + "-360");
        assertThat((Long) driver.executeScript("return document.documentElement.scrollWidth"))
                .as(name)
                .isLessThanOrEqualTo(360);
        serious(name);
    }

    /** Nothing serious for people who use the page by keyboard, magnifier or reader, and nothing sticks out at the side. */
    void isFitForAll(String name) throws IOException {
        for (int width : new int[] {360, 768, 1440}) {
            for (boolean dark : new boolean[] {false, true}) {
                size(width, 900, dark);
                look(name + "-" + width + (dark ? "-dark" : ""));
                assertThat((Long) driver.executeScript("return document.documentElement.scrollWidth"))
                        .as(name + " at " + width)
                        .isLessThanOrEqualTo(width);
                if (width != 768 && dark == (width == 1440)) {
                    serious(name + " at " + width + (dark ? ", dark" : ""));
                }
            }
        }
    }

    /** Rules of axe-core 4.10, which test the Web Content Accessibility Guidelines 2.2. */
    private void serious(String name) {
        List<Rule> found = new AxeBuilder().analyze(driver).getViolations();
        assertThat(found.stream()
                        .filter(r -> List.of("serious", "critical").contains(r.getImpact()))
                        .map(r -> r.getId() + " " + r.getNodes().get(0).getHtml()))
                .as(name)
                .isEmpty();
    }

    /** Leaves a picture for people to look at where {@code -Dbendline.look=DIR} is given. */
    private void look(String name) throws IOException {
        String folder = System.getProperty("bendline.look");
        if (folder != null) {
            Files.createDirectories(Path.of(folder));
            Files.write(Path.of(folder, name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
