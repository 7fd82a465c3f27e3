package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.cli.Calls;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.Select;

/** review.html of a sample job in a real browser, by mouse, touch and keyboard. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReviewPageBrowserTest {
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");

    private Path folder;

    private Path page;

    /** A browser a size: starting one takes seconds. */
    private final Map<String, Browser> browsers = new HashMap<>();

    @BeforeAll
    void write_the_page(@TempDir Path temporary) {
        folder = temporary;
        Path out = folder.resolve("results");
        Calls call = Calls.of(
                "report",
                SAMPLE.resolve("log.csv"),
                "--rig",
                SAMPLE.resolve("rig.yaml"),
                "--boundary",
                SAMPLE.resolve("boundary.geojson"),
                "--quiet",
                "--out",
                out);
        assertEquals(0, call.status(), call.err());
        page = out.resolve("review.html");
    }

    @AfterAll
    void close_the_browsers() {
        browsers.values().forEach(Browser::close);
    }

    private Browser browser(int width, int height, boolean touch) throws IOException {
        String size = width + " x " + height;
        Browser open = browsers.get(size);
        if (open == null) {
            open = Browser.open(folder, width, height, touch);
            browsers.put(size, open);
        }
        return open;
    }

    @ParameterizedTest
    @CsvSource({"1280, 800, false", "820, 1180, true", "390, 844, true"})
    void it_opens_from_disk_without_errors_and_asks_for_nothing(int width, int height, boolean touch)
            throws IOException {
        Browser browser = browser(width, height, touch);
        long ms = browser.openPage(page);
        System.out.println("review.html, " + Files.size(page) + " bytes, " + width + " x " + height
                + ": first map after " + ms + " ms");
        assertEquals(List.of(), browser.console());
        assertEquals(List.of(), browser.requests());
        Object wider = browser.driver.executeScript(
                "return document.documentElement.scrollWidth - document.documentElement.clientWidth");
        assertEquals(0L, wider, "the page is wider than the screen");
    }

    @ParameterizedTest
    @CsvSource({"1280, 800", "390, 844"})
    void nothing_breaks_the_rules_of_accessibility(int width, int height) throws IOException {
        Browser browser = browser(width, height, width < 1000);
        browser.openPage(page);
        browser.driver.executeScript(axe());
        Object violations = browser.driver.executeAsyncScript("var done = arguments[arguments.length - 1];"
                + "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']})"
                + ".then(function (r) { done(r.violations.map(function (v) {"
                + " return v.id + ': ' + v.nodes.map(function (n) { return n.html; }).slice(0, 3).join(' '); })); });");
        assertEquals(List.of(), violations);
    }

    private static String axe() throws IOException {
        try (InputStream in = ReviewPageBrowserTest.class.getResourceAsStream("/axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void a_click_on_the_ground_says_what_was_done_there() throws IOException {
        Browser browser = browser(1280, 800, false);
        browser.openPage(page);
        WebElement map = browser.driver.findElement(By.id("map"));
        new Actions(browser.driver)
                .scrollToElement(map)
                .moveToElement(map)
                .click()
                .perform();
        List<String> said = texts(browser, "#here dd");
        assertTrue(said.get(0).matches("\\d+"), said.toString());
        assertTrue(said.get(6).endsWith("gal/ac") || said.get(6).equals("–"), said.toString());
    }

    @Test
    void colors_units_and_spans_change_by_keyboard_alone() throws IOException {
        Browser browser = browser(1280, 800, false);
        browser.openPage(page);
        Select mode = new Select(browser.driver.findElement(By.id("mode")));
        for (String way : List.of("applied", "peers", "speed", "fix", "time", "target")) {
            mode.selectByValue(way);
            assertTrue(!texts(browser, "#legend .entry").isEmpty(), way);
        }
        WebElement rows = browser.driver.findElement(By.id("rows-in-time"));
        String before = texts(browser, "#here dd").get(2);
        rows.sendKeys(Keys.chord(Keys.SHIFT, Keys.ARROW_RIGHT), Keys.ARROW_DOWN);
        assertEquals("2", texts(browser, "#here dd").get(0));
        assertTrue(!texts(browser, "#here dd").get(2).equals(before));
        browser.driver.findElement(By.id("units")).sendKeys(Keys.ENTER);
        assertTrue(texts(browser, "#here dd").get(3).endsWith("km/h"), "metric");
        assertEquals(List.of(), browser.console());
    }

    @Test
    void a_settled_place_stays_settled_and_is_left_out_of_what_is_saved() throws IOException {
        Browser browser = browser(390, 844, true);
        browser.openPage(page);
        WebElement first = browser.driver.findElement(By.cssSelector("#places-list td select"));
        new Select(first).selectByValue("fixed");
        String gpx = gpx(browser);
        browser.openPage(page);
        assertEquals(
                "fixed",
                browser.driver
                        .findElement(By.cssSelector("#places-list td select"))
                        .getDomProperty("value"));
        assertEquals(gpx, gpx(browser));
        assertTrue(!gpx.contains("<name>S1</name>") && gpx.contains("<name>S2</name>"), gpx);
    }

    private static String gpx(Browser browser) {
        return (String) browser.driver.executeScript("return Rowledger.app.places.gpx()");
    }

    @Test
    void a_place_and_a_finding_lead_to_map_and_traces() throws IOException {
        Browser browser = browser(390, 844, true);
        browser.openPage(page);
        Object zoom = browser.driver.executeScript("return Rowledger.app.map.map.getZoom()");
        List<WebElement> places = browser.driver.findElements(By.cssSelector("#places-list td button"));
        // The smallest: the largest may be as long as the field.
        places.get(places.size() - 1).click();
        Browser.pause(600);
        Object closer = browser.driver.executeScript("return Rowledger.app.map.map.getZoom()");
        assertTrue(((Number) closer).doubleValue() > ((Number) zoom).doubleValue());
        browser.driver.findElement(By.cssSelector("[data-finding] button")).click();
        assertEquals("7", texts(browser, "#here dd").get(0));
    }

    /** Median time to paint a frame while panning and zooming, printed; software rendering. */
    @Test
    void frames_are_measured() throws IOException {
        Browser browser = browser(1280, 800, false);
        browser.openPage(page);
        Object frames =
                browser.driver.executeAsyncScript("var done = arguments[0]; var map = Rowledger.app.map; var n = 0;"
                        + "map.frames = []; var step = function () {"
                        + " if (n++ > 30) { done(map.frames); return; }"
                        + " if (n % 5 === 0) { map.map.setZoom(map.map.getZoom() + (n % 10 ? 0.5 : -0.5), {animate: false}); }"
                        + " else { map.map.panBy([40, 0], {animate: false}); } setTimeout(step, 0); }; step();");
        List<?> measured = (List<?>) frames;
        double[] ms = measured.stream()
                .mapToDouble(v -> ((Number) v).doubleValue())
                .sorted()
                .toArray();
        System.out.printf(
                java.util.Locale.ROOT, "review.html frames: median %.1f ms of %d%n", ms[ms.length / 2], ms.length);
        assertTrue(ms.length > 20);
    }

    private static List<String> texts(Browser browser, String selector) {
        Object texts = browser.driver.executeScript(
                "return Array.prototype.map.call(document.querySelectorAll(arguments[0]), function (e) {"
                        + " return e.textContent; });",
                selector);
        return ((List<?>) texts).stream().map(String::valueOf).toList();
    }
}
