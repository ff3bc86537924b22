package org.seamtally.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * A tab of a real browser without a window, on the page; it asks no host but the service's. A browser takes seconds to start:
 * there is one for all tests, and nothing is left in it of the test before.
 */
final class Browser implements AutoCloseable {

    // a busy machine is slow, not wrong
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private static final Dimension WINDOW = new Dimension(1440, 1000);

    private static final Path SCREENSHOTS = Path.of("target", "screenshots");
    private static final Path ENGINE = Path.of("src", "test", "browser", "node_modules", "axe-core", "axe.min.js");

    private static ChromeDriver shared;
    /** An empty tab, which keeps the browser open between two tests. */
    private static String rest;

    private final ChromeDriver driver;
    private final URL page;

    private Browser(ChromeDriver driver, URL page) {
        this.driver = driver;
        this.page = page;
    }

    /** Opens the page in a browser that has never seen it. */
    static Browser on(URL page) {
        ChromeDriver driver = shared();
        driver.executeCdpCommand("Network.clearBrowserCache", Map.of());
        driver.executeCdpCommand("Network.clearBrowserCookies", Map.of());
        driver.executeCdpCommand(
                "Storage.clearDataForOrigin",
                Map.of("origin", page.getProtocol() + "://" + page.getAuthority(), "storageTypes", "all"));
        // what the page is told of the window's width and colours belongs to a tab, and ends with it
        driver.switchTo().newWindow(WindowType.TAB);
        // as a person's does, whatever other window there is
        driver.executeCdpCommand("Emulation.setFocusEmulationEnabled", Map.of("enabled", true));
        driver.manage().window().setSize(WINDOW);
        driver.manage().logs().get(LogType.BROWSER);
        Browser browser = new Browser(driver, page);
        browser.open("");
        return browser;
    }

    private static synchronized ChromeDriver shared() {
        if (shared == null) {
            shared = started();
            rest = shared.getWindowHandle();
        }
        return shared;
    }

    private static ChromeDriver started() {
        try {
            Path profile = Files.createTempDirectory("browser");
            LoggingPreferences logs = new LoggingPreferences();
            logs.enable(LogType.BROWSER, Level.ALL);
            ChromeOptions options = new ChromeOptions();
            options.setBinary(program("chromium", "chromium").toFile());
            options.addArguments(
                    "--headless",
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                    "--window-size=" + WINDOW.width + "," + WINDOW.height,
                    "--user-data-dir=" + profile);
            options.setCapability("goog:loggingPrefs", logs);
            ChromeDriverService service = new ChromeDriverService.Builder()
                    .usingDriverExecutable(
                            program("chromedriver", "chromium-driver").toFile())
                    .usingAnyFreePort()
                    .build();
            ChromeDriver driver = new ChromeDriver(service, options);
            Runtime.getRuntime().addShutdownHook(new Thread(() -> quit(driver, profile)));
            return driver;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void quit(ChromeDriver driver, Path profile) {
        driver.quit();
        try (var files = Files.walk(profile)) {
            files.sorted(Comparator.reverseOrder())
                    .forEach(file -> file.toFile().delete());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path program(String name, String debianPackage) {
        return Arrays.stream(System.getenv("PATH").split(":"))
                .map(directory -> Path.of(directory, name))
                .filter(Files::isExecutable)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(
                        name + " is not on this machine: ./check installs it, the Debian package " + debianPackage));
    }

    /** @param part such as "#quotes" */
    void open(String part) {
        driver.get(page + part);
        waitUntil(
                "the page has started",
                () -> Boolean.TRUE.equals(js("return document.documentElement.dataset.ready === 'yes'")));
    }

    /** Goes to another document of the service's. @param path from the root on */
    void visit(String path) {
        driver.get(page.toString().replaceFirst("/$", "") + path);
    }

    Object js(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    WebElement one(String css) {
        waitUntil(
                "there is " + css,
                () -> !driver.findElements(By.cssSelector(css)).isEmpty());
        return driver.findElement(By.cssSelector(css));
    }

    List<WebElement> all(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    String text(String css) {
        return String.valueOf(js("return document.querySelector(arguments[0])?.innerText ?? ''", css));
    }

    /** What a field holds. */
    String value(String css) {
        return one(css).getDomProperty("value");
    }

    /** Waits until nothing makes the page longer or shorter any more: pictures are drawn after the figures. */
    void waitUntilDrawn() {
        Object[] height = {null};
        int[] polls = {0};
        waitUntil("the page is drawn", () -> {
            Object now = js("return document.body.scrollHeight");
            polls[0] = now.equals(height[0]) ? polls[0] + 1 : 0;
            height[0] = now;
            return polls[0] == 20;
        });
    }

    /** Waits for what must come; fails with these words where it does not. */
    void waitUntil(String what, Supplier<Boolean> holds) {
        new WebDriverWait(driver, PATIENCE)
                .pollingEvery(Duration.ofMillis(50))
                .ignoring(WebDriverException.class)
                .withMessage(what)
                .until(d -> holds.get());
    }

    void waitForText(String css, String part) {
        waitUntil(
                css + " says " + part + "; it says: " + text(css),
                () -> text(css).contains(part));
    }

    /** Types as a person at the keyboard does, wherever the focus is. */
    void type(CharSequence... keys) {
        new Actions(driver).sendKeys(keys).perform();
    }

    /** Holds Ctrl, or Shift, while a key goes down. */
    void chord(Keys held, CharSequence key) {
        new Actions(driver).keyDown(held).sendKeys(key).keyUp(held).perform();
    }

    /** The cell of a joint's field, by the words at the column's head. */
    WebElement cell(int row, String heading) {
        Object found = js("""
                const heads = [...document.querySelectorAll('#joints thead th')];
                const col = heads.findIndex((head) => [...head.childNodes]
                    .filter((node) => node.className !== 'unit').map((node) => node.textContent).join('').trim() === arguments[1]);
                return document.querySelectorAll('#joints tbody tr')[arguments[0] - 1]?.children[col] ?? null;
                """, row, heading);
        if (found == null) {
            throw new AssertionError("no cell in row " + row + " under " + heading + ": " + text("#joints thead"));
        }
        return (WebElement) found;
    }

    /** Chooses one of the frames to start from and waits for its price. */
    void startFrom(String file) {
        js(
                "const s = document.getElementById('example'); s.value = arguments[0]; s.dispatchEvent(new Event('change'))",
                file);
        waitUntil("the example has joints", () -> all("#joints tbody tr").size() > 2);
        one("#price .total");
    }

    /** The window's width in CSS pixels; below what a window can be made, by telling the page so. */
    void width(int pixels, int height) {
        driver.manage().window().setSize(new Dimension(Math.max(pixels, 500), height));
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", pixels, "height", height, "deviceScaleFactor", 1, "mobile", pixels < 500));
    }

    void dark(boolean dark) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    /** Keeps a picture of the whole page under target/screenshots. */
    void picture(String name) {
        try {
            Files.createDirectories(SCREENSHOTS);
            String whole = (String) driver.executeCdpCommand(
                            "Page.captureScreenshot", Map.of("captureBeyondViewport", true, "format", "png"))
                    .get("data");
            Files.write(SCREENSHOTS.resolve(name + ".png"), OutputType.BYTES.convertFromBase64Png(whole));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the accessibility engine finds against WCAG 2.2 A and AA, a line each. */
    @SuppressWarnings("unchecked")
    List<String> accessibilityFaults() {
        if (!Files.exists(ENGINE)) {
            throw new IllegalStateException(ENGINE + " is missing: ./check fetches it (npm ci in src/test/browser)");
        }
        try {
            driver.executeScript(Files.readString(ENGINE));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return (List<String>) driver.executeAsyncScript("""
                const done = arguments[arguments.length - 1];
                axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']})
                  .then((found) => done(found.violations.flatMap((one) =>
                    one.nodes.map((node) => one.id + ': ' + node.html.slice(0, 120) + ' ' + node.failureSummary))),
                  (fault) => done(['the engine failed: ' + fault]));
                """);
    }

    /** What stands in the browser's log since last asked, without the refusals that a test provoked. */
    List<String> complaints(String... provoked) {
        List<String> found = new ArrayList<>();
        driver.manage().logs().get(LogType.BROWSER).forEach(entry -> {
            if (Arrays.stream(provoked).noneMatch(entry.getMessage()::contains)) {
                found.add(entry.getLevel() + " " + entry.getMessage());
            }
        });
        return found;
    }

    /** Closes its tab, and those that were opened from it. */
    @Override
    public void close() {
        for (String tab : driver.getWindowHandles()) {
            if (!tab.equals(rest)) {
                driver.switchTo().window(tab).close();
            }
        }
        driver.switchTo().window(rest);
    }
}
