package io.rowledger.browser;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A headless Chromium for tests, where Debian's packages chromium and chromium-driver are installed. */
final class Browser implements AutoCloseable {
    private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
    private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

    private static final java.util.logging.Logger QUIET = java.util.logging.Logger.getLogger("org.openqa.selenium");

    final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    static {
        // It warns of developer tools that these tests don't use.
        QUIET.setLevel(java.util.logging.Level.SEVERE);
    }

    /** Opens a browser of this size; skips the test where there is none. */
    static Browser open(Path folder, int width, int height, boolean touch) throws IOException {
        assumeTrue(
                Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER),
                "no browser: install the Debian packages chromium and chromium-driver to run the tests of review.html");
        Path profile = Files.createTempDirectory(folder, "profile");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(CHROMIUM.toFile());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-dev-shm-usage",
                "--user-data-dir=" + profile);
        if (touch) {
            options.setExperimentalOption(
                    "mobileEmulation",
                    Map.of(
                            "deviceMetrics",
                            Map.of("width", width, "height", height, "pixelRatio", 1.0, "touch", true)));
        }
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, java.util.logging.Level.ALL);
        logs.enable(LogType.PERFORMANCE, java.util.logging.Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(DRIVER.toFile())
                .usingAnyFreePort()
                .build();
        ChromeDriver driver = new ChromeDriver(service, options);
        driver.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
        driver.manage().window().setSize(new Dimension(width, height));
        return new Browser(driver);
    }

    /** Makes the window that of another device, and loads the page again as a touch screen would see it. */
    void become(int width, int height, boolean touch) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", touch));
        driver.executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", touch));
        driver.navigate().refresh();
    }

    /** Opens a file from disk and waits until the page says that its first map is there; milliseconds that took. */
    long openPage(Path page) {
        driver.get(page.toUri().toString());
        for (int tries = 0; tries < 300; tries++) {
            Object ready = driver.executeScript("return document.documentElement.getAttribute('data-ready')");
            if (ready != null) {
                return Long.parseLong(ready.toString());
            }
            pause(50);
        }
        throw new AssertionError("the page never got ready: " + console());
    }

    static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Errors that the page wrote to the console. */
    List<String> console() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= java.util.logging.Level.SEVERE.intValue())
                .map(entry -> entry.getMessage())
                .toList();
    }

    /** Addresses that were asked for, of any kind but files and data in the page. */
    List<String> requests() {
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
                .map(entry -> entry.getMessage())
                .filter(message -> message.contains("Network.requestWillBeSent\""))
                .filter(message -> message.contains("\"documentURL\":\"file:"))
                .filter(message -> !message.contains("\"url\":\"file:")
                        && !message.contains("\"url\":\"data:")
                        && !message.contains("\"url\":\"blob:"))
                .toList();
    }

    /** Addresses that were asked for and begin with none of these. */
    List<String> requestsBeyond(String... own) {
        java.util.regex.Pattern url = java.util.regex.Pattern.compile("\"request\":\\{.*?\"url\":\"([^\"]*)\"");
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
                .map(entry -> entry.getMessage())
                .filter(message -> message.contains("Network.requestWillBeSent\""))
                .map(url::matcher)
                .filter(java.util.regex.Matcher::find)
                .map(found -> found.group(1))
                .filter(address -> java.util.Arrays.stream(own).noneMatch(address::startsWith))
                .toList();
    }

    @Override
    public void close() {
        driver.quit();
    }
}
