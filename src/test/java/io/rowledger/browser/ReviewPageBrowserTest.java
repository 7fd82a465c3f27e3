package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/**
 * review.html in a real browser: everything that a person can do there, by mouse, by touch on a phone, and by keyboard. Every
 * text that a person can enter is hostile in this job.
 */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReviewPageBrowserTest {
    private static final List<String> MODES = List.of("applied", "peers", "speed", "fix", "time", "target");

    private static final List<String> LAYERS =
            List.of("backdrop", "strips", "skips", "overlaps", "findings", "boundary", "setbacks", "zones");

    private Path folder;

    private Path page;

    /** A browser a size: starting one takes seconds. */
    private final Map<String, Browser> browsers = new HashMap<>();

    @BeforeAll
    void write_the_page(@TempDir Path temporary) throws IOException {
        folder = temporary;
        page = SampleJob.report(folder);
    }

    @AfterAll
    void close_the_browsers() {
        browsers.values().forEach(Browser::close);
    }

    private ReviewPageHands open(int width, int height, boolean touch) throws IOException {
        String size = width + " x " + height;
        Browser open = browsers.get(size);
        if (open == null) {
            open = Browser.open(folder, width, height, touch);
            browsers.put(size, open);
        }
        long ms = open.openPage(page);
        System.out.println("review.html, " + Files.size(page) + " bytes, " + size + ": first map after " + ms + " ms");
        return new ReviewPageHands(open, touch);
    }

    /** The page on a desk as another test left it, for what doesn't depend on that. */
    private ReviewPageHands asItIs() throws IOException {
        Browser open = browsers.get("1280 x 800");
        return open == null ? open(1280, 800, false) : new ReviewPageHands(open, false);
    }

    @ParameterizedTest
    @CsvSource({"1280, 800, false", "390, 844, true"})
    void it_opens_from_disk_without_errors_and_breaks_no_rule_of_accessibility(int width, int height, boolean touch)
            throws IOException {
        ReviewPageHands hands = open(width, height, touch);
        assertEquals(List.of(), hands.browser.requests());
        assertEquals(
                0L,
                hands.run("return document.documentElement.scrollWidth - document.documentElement.clientWidth"),
                "the page is wider than the screen");
        for (String look : List.of("", "night")) {
            hands.run("document.documentElement.classList.toggle('night', arguments[0] === 'night')", look);
            hands.run(axe());
            Object violations = hands.browser.driver.executeAsyncScript(
                    "var done = arguments[arguments.length - 1];"
                            + "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']})"
                            + ".then(function (r) { done(r.violations.map(function (v) {"
                            + " return v.id + ': ' + v.nodes.map(function (n) { return n.html; }).slice(0, 3).join(' '); })); });");
            assertEquals(List.of(), violations, look);
        }
        assertEquals(List.of(), hands.browser.console());
    }

    private static String axe() throws IOException {
        try (InputStream in = ReviewPageBrowserTest.class.getResourceAsStream("/axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void what_a_person_entered_shows_as_text() throws IOException {
        ReviewPageHands hands = open(1280, 800, false);
        String shown = SampleJob.HOSTILE.replace("\u202e", "");
        for (String selector : List.of("h1", "header p", "section h3")) {
            assertTrue(
                    hands.texts(selector).stream()
                            .anyMatch(text -> text.replace("\u202e", "").contains(shown)),
                    selector + ": " + hands.texts(selector));
        }
        assertEquals(0L, hands.run("return document.querySelectorAll('#body img[src=x]').length"));
        assertNotEquals("owned", hands.run("return document.title"));
        assertFalse(hands.texts("h1").get(0).contains("\u202e"), "a mark that turns the direction of writing");
        hands.run("Rowledger.app.show('es', 'metric')");
        assertTrue(hands.texts("h1").get(0).contains(shown));
        assertEquals(0L, hands.run("return document.querySelectorAll('#body img[src=x]').length"));
    }

    /** REVIEW in its order, by mouse. */
    @Test
    void everything_can_be_done_by_mouse() throws IOException {
        ReviewPageHands hands = open(1280, 800, false);
        theAnswerLeadsOn(hands);
        hands.tap("#map");
        whatIsKnown(hands);
        for (String layer : LAYERS) {
            hands.tap("#layer-" + layer);
        }
        assertEquals("false", String.valueOf(hands.run("return document.getElementById('layer-skips').checked")));
        assertEquals(0L, hands.run("return document.querySelectorAll('#map path.skip').length"));
        assertTrue(((Number) hands.run("return document.querySelectorAll('#map path.zone').length")).intValue() > 0);
        LAYERS.forEach(layer -> hands.tap("#layer-" + layer));
        modes(hands);
        places(hands);
        hands.drag("#rows-in-time", 0.25, 0.75);
        assertNotEquals("null", hands.span(), "a brushed span");
        hands.tap("#clear");
        assertEquals("null", hands.span());
        hands.drag(".u-over", 0.3, 0.6);
        assertNotEquals("null", hands.span(), "a span brushed on a trace");
        theRest(hands);
        assertEquals(List.of(), hands.browser.console());
    }

    /** The same by touch on a phone, with a pinch, an own position, and a reload. */
    @Test
    void everything_can_be_done_by_touch_on_a_phone() throws IOException {
        ReviewPageHands hands = open(390, 844, true);
        theAnswerLeadsOn(hands);
        hands.tap("#map");
        whatIsKnown(hands);
        hands.tap("#home");
        hands.untilItRests();
        double before = hands.zoom();
        hands.pinch("#map");
        assertTrue(hands.zoomsInFrom(before), "a pinch zooms in");
        hands.tap("#layer-boundary");
        assertEquals(0L, hands.run("return document.querySelectorAll('#map path.boundary').length"));
        modes(hands);
        hands.browser.driver.executeCdpCommand(
                "Browser.grantPermissions", Map.of("permissions", List.of("geolocation")));
        hands.browser.driver.executeCdpCommand(
                "Emulation.setGeolocationOverride", Map.of("latitude", 41.5338, "longitude", -93.5125, "accuracy", 3));
        hands.tap("#locate");
        Browser.pause(500);
        assertTrue(hands.here().toString().contains("41.5338"), hands.here().toString());
        places(hands);
        String gpx = hands.gpx();
        hands.browser.openPage(page);
        assertEquals(gpx, hands.gpx(), "what was marked survives a reload");
        hands.drag("#rows-in-time", 0.25, 0.75);
        assertNotEquals("null", hands.span());
        hands.tap("#clear");
        theRest(hands);
        assertEquals(List.of(), hands.browser.console());
    }

    /** The same by keyboard alone. */
    @Test
    void everything_can_be_done_by_keyboard() throws IOException {
        ReviewPageHands hands = open(1280, 800, false).byKeyboard();
        theAnswerLeadsOn(hands);
        hands.tap("#home");
        hands.untilItRests();
        double before = hands.zoom();
        hands.press("#map", "+");
        assertTrue(hands.zoomsInFrom(before), "plus zooms in");
        hands.press("#map", Keys.ARROW_RIGHT, Keys.ENTER);
        whatIsKnown(hands);
        hands.tap("#layer-overlaps");
        assertEquals(0L, hands.run("return document.querySelectorAll('#map path.overlap').length"));
        hands.tap("#layer-overlaps");
        modes(hands);
        places(hands);
        hands.press("#rows-in-time", Keys.ARROW_DOWN);
        hands.tap("#span-from");
        hands.press("#rows-in-time", Keys.chord(Keys.SHIFT, Keys.ARROW_RIGHT));
        hands.tap("#span-to");
        assertEquals(
                "21", String.valueOf(hands.run("var s = Rowledger.app.span; return s.to - s.from")), "a span of steps");
        hands.tap("#clear");
        theRest(hands);
        assertEquals(List.of(), hands.browser.console());
    }

    /** 1: verdict, at most three actions, figures with their bounds; an action leads to its row or places. */
    private static void theAnswerLeadsOn(ReviewPageHands hands) {
        assertTrue(hands.texts(".verdict").get(0).startsWith("No, by the meters:"), "the verdict comes first");
        int actions = hands.texts(".actions li").size();
        assertTrue(actions >= 1 && actions <= 3, actions + " actions");
        assertTrue(hands.texts(".figures").toString().contains(" to "), "figures have bounds");
        List<String> steps = hands.texts(".actions li");
        int drive = 1;
        while (!steps.get(drive - 1).startsWith("Drive back")) {
            drive++;
        }
        Object first = hands.run("var names = document.querySelector('.actions li:nth-child(" + drive
                + ") [data-places]').getAttribute('data-places').split(','); var data = Rowledger.app.job.data;"
                + " return data.skips.filter(function (p) { return names.indexOf(p.label) >= 0; })[0].at");
        hands.tap(".actions li:nth-child(" + drive + ") button");
        hands.untilItRests();
        assertEquals(first, hands.run("return Rowledger.app.at"), "an action leads to its first place");
    }

    /** 2: what is known of the ground under the cursor. */
    private static void whatIsKnown(ReviewPageHands hands) {
        List<String> here = hands.here();
        assertTrue(here.get(0).matches("\\d+") && here.size() == 10, here.toString());
        assertTrue(here.get(3).endsWith("mph") && here.get(5).endsWith("gal/ac"), here.toString());
        assertTrue(here.get(9).matches("41\\.53\\d+, -93\\.51\\d+"), here.toString());
    }

    private static void modes(ReviewPageHands hands) {
        for (String mode : MODES) {
            hands.choose("#mode", mode);
            assertEquals(mode, hands.run("return Rowledger.app.mode.key"));
            assertFalse(hands.texts("#legend .entry").isEmpty(), mode);
        }
    }

    /** 3: filters, a place on the map, marks, and what is left as GPX. */
    private static void places(ReviewPageHands hands) {
        int all = hands.texts("#places-list td:first-child").size();
        for (String filter : List.of("kind", "cause", "size", "row", "pass")) {
            String value = String.valueOf(hands.run(
                    "return document.getElementById(arguments[0]).options["
                            + "document.getElementById(arguments[0]).options.length - 1].value",
                    "filter-" + filter));
            hands.choose("#filter-" + filter, value);
            int some = hands.texts("#places-list td:first-child").size();
            assertTrue(some < all, filter + " " + value + ": " + some + " of " + all);
            hands.choose("#filter-" + filter, "");
        }
        hands.tap("#home");
        hands.untilItRests();
        double before = hands.zoom();
        hands.tap("#places-list tr:last-child button");
        assertTrue(hands.zoomsInFrom(before), "a place is zoomed to");
        hands.choose("#places-list tr:nth-child(2) select", "fixed");
        hands.choose("#places-list tr:nth-child(3) select", "not_real");
        String gpx = hands.gpx();
        assertFalse(gpx.contains("<name>S1</name>") || gpx.contains("<name>S2</name>"), gpx);
        assertTrue(gpx.contains("<name>S3</name>"), gpx);
    }

    /** 4 to 8: playback, passes, findings, the bar, what-if, units, language, night. */
    private static void theRest(ReviewPageHands hands) {
        Object step = hands.run("return Rowledger.app.step");
        hands.tap("#play");
        Browser.pause(450);
        hands.tap("#play");
        assertNotEquals(step, hands.run("return Rowledger.app.step"), "playback moves the cursor");
        assertEquals(4, hands.texts("#traces .u-title").size(), "flow, ratio, pressure and speed");

        hands.tap("[data-pass] button");
        assertNotEquals("null", hands.span(), "a pass is a span");
        assertTrue(((Number) hands.run("return document.querySelectorAll('[data-trace] path.rate').length")).intValue()
                > 5);
        hands.tap("#clear");

        assertTrue(
                hands.texts(".cautions").get(0).length() > 200
                        && Boolean.TRUE.equals(hands.run("return !!(document.querySelector('.cautions')"
                                + ".compareDocumentPosition(document.querySelector('.card')) & 4)")),
                "cautions stand before the findings");
        hands.tap("#finding-1 button");
        assertEquals("7", hands.here().get(0), "the finding's row");
        assertTrue(hands.texts("#finding-1 li").size() >= 5, "facts and checks in order");

        assertEquals(12, hands.texts("svg.bar text.row").size(), "the bar to scale");
        hands.tap("#units");
        assertTrue(hands.here().get(3).endsWith("km/h"), "metric");
        assertTrue(hands.texts(".figures").toString().contains("\u00a0ha"), "printed figures too");
        assertEquals("7", hands.here().get(0), "the cursor stays");
        hands.tap("#language");
        assertEquals("La respuesta", hands.texts("#h-answer").get(0));
        assertTrue(hands.texts(".verdict").get(0).startsWith("No, por los medidores"), "Spanish");
        assertEquals("es", hands.run("return document.documentElement.lang"));
        hands.tap("#language");
        hands.tap("#units");
        hands.tap("#night");
        assertEquals("true", hands.run("return document.getElementById('night').getAttribute('aria-pressed')"));
        hands.tap("#night");
    }

    /** On paper and without scripts nothing is shown that only a script can work; what is printed at night is dark on white. */
    @Test
    void paper_and_a_browser_without_scripts_show_no_dead_controls() throws IOException {
        ReviewPageHands hands = open(1280, 800, false);
        String seen = "return Array.prototype.filter.call(document.querySelectorAll('#body button, #body select'),"
                + " function (e) { return e.offsetParent && !e.closest('td'); }).length";
        assertTrue(((Number) hands.run(seen)).intValue() > 10, "controls on the screen");
        hands.tap("#night");
        hands.browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
        Browser.pause(300);
        assertEquals(0L, hands.run(seen), "on paper");
        assertEquals("rgb(0, 0, 0)", hands.run("return getComputedStyle(document.querySelector('h1')).color"));
        assertEquals(
                true, hands.run("return document.querySelector('svg.picture').getBoundingClientRect().width > 300"));
        hands.browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "screen"));
        hands.run("document.documentElement.classList.remove('live')");
        assertEquals(0L, hands.run(seen), "without scripts");
        assertEquals(List.of(), hands.browser.console());
    }

    /** A chosen row draws the traces anew; the mark in them stays on the step. */
    @Test
    void the_cursor_is_on_the_step_in_the_traces_of_another_row() throws IOException {
        ReviewPageHands hands = open(1280, 800, false);
        hands.run("Rowledger.app.moveTo(5000, 6)");
        Browser.pause(200);
        List<?> off = (List<?>) hands.run("var app = Rowledger.app; return app.traces.plots.map(function (plot) {"
                + " return plot.posToVal(plot.cursor.left, 'x') - app.job.data.startS - app.job.axis[5000]; });");
        assertEquals(4, off.size());
        for (Object seconds : off) {
            assertEquals(0, ((Number) seconds).doubleValue(), 5, "seconds off the step");
        }
    }

    /** Eighteen hours between two days take 10 to 20 min on an axis, and a meter of rows 7 and 8 reads what both got. */
    @Test
    void a_night_is_short_on_an_axis_and_the_rows_of_a_meter_are_summed() throws IOException {
        ReviewPageHands hands = asItIs();
        List<?> found = (List<?>) hands.run("var job = Rowledger.app.job; var time = job.time.map(function (s, k) {"
                + " return s + (k > 5000 ? 64800 : 0); });"
                + "var data = Object.assign({}, job.data, {meters: [[[7, 8]]]});"
                + "var other = new Rowledger.Job(data, Object.assign({}, job.columns, {time: time}));"
                + "return [other.axis[5001] - other.axis[5000], (other.time[5001] - other.time[5000]) % 600"
                + " - (other.axis[5001] - other.axis[5000]) % 600, other.timeAt(other.axisAt(time[9000] + 0.1)) - time[9000],"
                + " other.meterFlow(0, 7, 3000) - job.flows[0][6][3000] - job.flows[0][7][3000],"
                + " other.meterFlow(0, 8, 3000) - job.flows[0][8][3000]];");
        double[] values =
                found.stream().mapToDouble(v -> ((Number) v).doubleValue()).toArray();
        assertTrue(values[0] >= 600 && values[0] < 1200, "a night takes " + values[0] + " s");
        assertEquals(0, values[1], 1e-6, "labels stay on whole ten minutes");
        assertEquals(0.1, values[2], 1e-6);
        assertEquals(0, values[3], 1e-12);
        assertEquals(0, values[4], 1e-12);
    }

    /** In the workbench and in some private windows a page may keep nothing: then it says so before a mark is lost. */
    @Test
    void a_browser_that_keeps_nothing_is_told_of() throws IOException {
        ReviewPageHands hands = open(1280, 800, false);
        assertEquals(List.of(""), hands.texts("#places-list .warning"));
        hands.run("Object.defineProperty(window, 'localStorage', {get: function () { throw new Error('no'); }});"
                + "Rowledger.app.settled = new Rowledger.Settled('x'); Rowledger.app.show('en', 'us');");
        assertTrue(hands.texts("#places-list .warning").get(0).contains("results folder"));
        hands.choose("#places-list tr:nth-child(2) select", "fixed");
        assertFalse(hands.gpx().contains("<name>S1</name>"), "a mark counts as long as the page is open");
    }

    /** Bytes that Java packed in every way that RFC 1951 has: stored, with fixed codes and with written ones. */
    @ParameterizedTest
    @CsvSource({"0, 0", "1, 0", "9, 0", "9, 1", "6, 2"})
    void packed_bytes_are_the_same_in_the_browser(int level, int strategy) throws IOException {
        ReviewPageHands hands = asItIs();
        SplittableRandom random = new SplittableRandom(level);
        for (int size : new int[] {0, 1, 3, 300, 200_000}) {
            byte[] plain = new byte[size];
            for (int i = 0; i < size; i++) {
                plain[i] = (byte) (i % 1000 < 300 ? random.nextInt(256) : i % 1000 < 600 ? i % 7 : random.nextInt(3));
            }
            Deflater deflater = new Deflater(level);
            deflater.setStrategy(strategy);
            ByteArrayOutputStream packed = new ByteArrayOutputStream();
            try (DeflaterOutputStream out = new DeflaterOutputStream(packed, deflater)) {
                out.write(plain);
            }
            deflater.end();
            Object back = hands.run(
                    "var plain = Rowledger.inflate(Rowledger.bytes(arguments[0])); var text = '';"
                            + "plain.forEach(function (b) { text += String.fromCharCode(b); }); return btoa(text);",
                    Base64.getEncoder().encodeToString(packed.toByteArray()));
            assertEquals(Base64.getEncoder().encodeToString(plain), back, size + " bytes");
        }
    }

    @Test
    void damaged_bytes_are_not_unpacked() throws IOException {
        ReviewPageHands hands = asItIs();
        Object refused = hands.run("var bytes = Rowledger.bytes(document.getElementById('job-columns').textContent);"
                + "return [1000, bytes.length - 2].map(function (at) { var other = bytes.slice(); other[at] ^= 4;"
                + " try { Rowledger.inflate(other); return 'read'; } catch (e) { return 'refused'; } });");
        assertEquals(List.of("refused", "refused"), refused);
    }

    /** Median times of the strips and of whole frames while panning and zooming, printed; software rendering. */
    @Test
    void frames_are_measured() throws IOException {
        ReviewPageHands hands = open(1280, 800, false);
        List<?> measured = (List<?>) hands.browser.driver.executeAsyncScript(
                "var done = arguments[0]; var map = Rowledger.app.map; var n = 0; var whole = []; map.frames = [];"
                        + "var step = function () {"
                        + " if (n++ > 30) { done([map.frames, whole]); return; }"
                        + " var begin = performance.now();"
                        + " if (n % 5 === 0) { map.map.setZoom(map.map.getZoom() + (n % 10 ? 0.5 : -0.5), {animate: false}); }"
                        + " else { map.map.panBy([40, 0], {animate: false}); }"
                        + " requestAnimationFrame(function () { setTimeout(function () {"
                        + " whole.push(performance.now() - begin); step(); }, 0); }); }; step();");
        double[] strips = sorted(measured.get(0));
        double[] whole = sorted(measured.get(1));
        System.out.printf(
                Locale.ROOT,
                "review.html: strips drawn in %.1f ms, whole frames in %.1f ms (medians of %d)%n",
                strips[strips.length / 2],
                whole[whole.length / 2],
                whole.length);
        assertTrue(strips.length > 20 && whole.length > 20);
    }

    private static double[] sorted(Object numbers) {
        return ((List<?>) numbers)
                .stream().mapToDouble(v -> ((Number) v).doubleValue()).sorted().toArray();
    }
}
