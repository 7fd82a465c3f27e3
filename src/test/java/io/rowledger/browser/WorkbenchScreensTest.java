package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.workbench.Workbench;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every screen of the sample field on a desk, a tablet and a phone: nothing wider than the screen, axe-core clean. */
@Tag("slow")
class WorkbenchScreensTest {
    private static final List<String> SCREENS =
            List.of("logs", "columns", "time", "bar", "tape", "product", "maps", "facts", "run");

    private static final String ACTION = "[data-field='Sample plugged row'] .actions li";

    @TempDir
    private Path folder;

    @Test
    void the_sample_is_shown_and_every_screen_can_be_used_on_desk_tablet_and_phone() throws IOException {
        Path season = Files.createDirectory(folder.resolve("season"));
        Workbench.Settings settings = new Workbench.Settings(season, "test", Throwable::printStackTrace);
        try (Workbench workbench = Workbench.start(settings);
                Browser browser = Browser.open(folder, 1280, 800, false)) {
            browser.become(1280, 800, false);
            Person person = new Person(browser);
            person.open(workbench.link());
            person.see("main[data-loaded=season]");
            long start = System.nanoTime();
            person.clickText("Show me a sample field");
            person.see("main[data-loaded=results] iframe");
            System.out.println("workbench, first start to the sample's review: "
                    + (System.nanoTime() - start) / 1_000_000 + " ms, " + person.clicks + " click");
            Path review = season.resolve("results/Sample plugged row/review.html");
            assertTrue(
                    Files.readString(review).replace((char) 0xa0, ' ').contains("9:00 AM to 9:48 AM"),
                    "not the hours of the screen of the time");
            screens(browser, person, "desk");
            keyboard(browser, person);
            browser.become(820, 1180, true);
            screens(browser, person, "tablet");
            browser.become(390, 844, true);
            screens(browser, person, "phone");
            browser.driver.executeScript("location.hash = '#/'");
            person.see("main[data-shown=season][data-loaded]");
            person.see("[data-field='Sample plugged row'] svg.picture path.covered");
            person.clickText("Español");
            person.see("html[lang=es] main[data-shown=season][data-loaded]");
            assertTrue(person.text("main h1").equals("Temporada"), person.all());
            assertTrue(person.text("[data-field='Sample plugged row']").contains("Revise el surco 7"), person.all());
            screens(browser, person, "phone-es");
            lengthsInSpanish(browser, person);
            actionsInLiters(browser, person);
            prescription(browser, person);
            columnLeftOut(browser, person);
            ticket(browser, person);
            moved(browser, person, season, true);
            browser.become(1280, 800, false);
            moved(browser, person, season, false);
            browser.become(390, 844, true);
            hostile(browser, person, season);
            seasonStopped(browser, person);
        }
    }

    private static void moved(Browser browser, Person person, Path season, boolean touch) throws IOException {
        WorkbenchDrags drags = new WorkbenchDrags(browser, person, touch);
        drags.lengths();
        drags.rows(season.resolve("Sample plugged row/rig.yaml"));
        drags.corners();
    }

    /** What the log says of the lengths is told in the page's language. */
    private static void lengthsInSpanish(Browser browser, Person person) {
        browser.driver.executeScript("location.hash = '#/field/tape/Sample%20plugged%20row'");
        person.see("[data-driven]");
        assertTrue(person.all().contains("coincide") && !person.all().contains("agrees"), person.all());
    }

    /** What to do next has its figures in the page's units. */
    private static void actionsInLiters(Browser browser, Person person) {
        browser.driver.executeScript("location.hash = '#/'");
        person.see("main[data-shown=season][data-loaded]");
        person.see(ACTION + "[title*='\u00a0gal ']");
        person.clickText("EE. UU. / métrico");
        person.see(ACTION + "[title*='\u00a0L ']");
        person.clickText("EE. UU. / métrico");
        person.see(ACTION + "[title*='\u00a0gal ']");
    }

    /** A prescription handed in on the screen of the maps is drawn, and its rate is chosen there. */
    private void prescription(Browser browser, Person person) throws IOException {
        Path map = Files.writeString(folder.resolve("zones 2026.geojson"), """
                {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"Y99": 44, "name": "all"},
                 "geometry": {"type": "Polygon", "coordinates":
                 [[[-93.516, 41.532], [-93.509, 41.532], [-93.509, 41.536], [-93.516, 41.536], [-93.516, 41.532]]]}}]}
                """);
        browser.driver.executeScript("location.hash = '#/field/maps/Sample%20plugged%20row'");
        person.see("main[data-shown=maps][data-loaded]");
        person.drop("section[data-kind=prescription] input[type=file]", List.of(map));
        person.see("svg.maps .zone");
        person.choose("#rate", "Y99");
        Path rig = folder.resolve("season/Sample plugged row/rig.yaml");
        for (int i = 0; i < 100 && !Files.readString(rig).contains("Y99"); i++) {
            Browser.pause(50);
        }
        assertTrue(Files.readString(rig).contains("rate: Y99"), Files.readString(rig));
        assertTrue(Files.isRegularFile(rig.resolveSibling("prescription.geojson")));
    }

    /** The season's run is seen in the fields' lines and can be stopped from the season's screen, also by who comes back to it. */
    private static void seasonStopped(Browser browser, Person person) throws IOException {
        browser.driver.executeScript("location.hash = '#/'");
        person.see("main[data-shown=season][data-loaded]");
        person.clickText("Hacer todos los campos");
        person.see(".field .work progress");
        browser.driver.executeScript("location.hash = '#/field/logs/Sample%20clean'");
        person.see("main[data-shown=logs][data-loaded]");
        browser.driver.executeScript("location.hash = '#/'");
        person.see(".field .work progress");
        person.shot("season-running");
        person.clickText("Parar");
        person.waitFor("parado");
        person.clickText("Hacer todos los campos");
        person.see(".field .work progress");
        person.clickText("Parar");
    }

    /** A column whose name is understood can be left out all the same. */
    private void columnLeftOut(Browser browser, Person person) throws IOException {
        browser.driver.executeScript("location.hash = '#/field/columns/Sample%20plugged%20row'");
        person.see("main[data-loaded=columns]");
        assertTrue(person.text("tr[data-header='pressure[psi]']").contains("presión, psi"), person.all());
        person.choose("tr[data-header='pressure[psi]'] select", "-");
        person.waitFor("no se usa");
        person.see("main[data-loaded=columns]");
        Path rig = folder.resolve("season/Sample plugged row/rig.yaml");
        assertTrue(Files.readString(rig).contains("not_needed:\n  - pressure[psi]"), Files.readString(rig));
        assertTrue(person.text("tr[data-header='pressure[psi]']").contains("no se usa"), person.all());
    }

    /** An order and a load ticket stand in the rig file as a person would write them; a figure without a unit is refused. */
    private void ticket(Browser browser, Person person) throws IOException {
        browser.driver.executeScript("location.hash = '#/field/facts/Sample%20plugged%20row'");
        person.see("main[data-loaded=facts]");
        person.click("details.amounts summary");
        person.type("#amount-order-uan", "600 gal");
        person.click("fieldset[data-list=tickets] button");
        person.type("#amount-tickets-0-number", "48213");
        person.type("#amount-tickets-0-weight", "6800");
        person.waitFor("job.tickets[1].weight");
        assertTrue(person.sees("#amount-tickets-0-weight[aria-invalid=true]"), "the field that is wrong is marked");
        person.type("#amount-tickets-0-weight", "6800 lb");
        person.shot("facts-ticket");
        person.click("main .next button");
        person.see("main[data-shown=run][data-loaded]");
        String rig = Files.readString(folder.resolve("season/Sample plugged row/rig.yaml"));
        assertTrue(rig.contains("order:\n    uan: 600 gal"), rig);
        assertTrue(
                rig.contains("tickets:\n  - number: '48213'\n    weight: 6800 lb")
                        || rig.contains("tickets:\n  - number: 48213\n    weight: 6800 lb"),
                rig);
    }

    /** Every text that a person can give is shown as the text that it is: names of folders, files, columns, bars, facts. */
    private static void hostile(Browser browser, Person person, Path season) throws IOException {
        String field = HostileField.write(season);
        List<String> addresses = new ArrayList<>(List.of("#/"));
        SCREENS.forEach(screen -> addresses.add("#/field/" + screen + "/" + encoded(field)));
        addresses.add("#/field/logs/" + encoded(HostileField.WITHOUT_RIG));
        StringBuilder shown = new StringBuilder();
        for (String address : addresses) {
            browser.driver.executeScript("location.hash = arguments[0]", address);
            String screen = address.equals("#/") ? "season" : address.split("/", -1)[2];
            person.see("main[data-shown=" + screen + "][data-loaded]");
            if (screen.equals("run")) {
                person.click("main .primary");
                person.see("main[data-loaded=results] iframe");
            }
            shown.append(browser.driver.executeScript(
                    "return document.body.textContent + Array.prototype.map.call(document.querySelectorAll('input'),"
                            + " function (each) { return each.value; }).join(' ')"));
            assertEquals(
                    0L,
                    browser.driver.executeScript("return document.querySelectorAll('img, main script').length"),
                    address);
        }
        for (String text : HostileField.SHOWN) {
            assertTrue(shown.indexOf(text) >= 0, () -> text + " is not shown as it is: " + shown);
        }
        // A name that only another program can give a folder is refused in words.
        browser.driver.executeScript(
                "location.hash = '#/field/logs/' + encodeURIComponent(arguments[0])", HostileField.TAG);
        person.see("#messages .problem");
        assertEquals("Rowledger", browser.driver.getTitle());
    }

    private static String encoded(String name) {
        return java.net.URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
    }

    private static void screens(Browser browser, Person person, String device) throws IOException {
        List<String> faults = new ArrayList<>();
        List<String> all = new ArrayList<>(List.of("#/"));
        SCREENS.forEach(screen -> all.add("#/field/" + screen + "/Sample%20plugged%20row"));
        for (String address : all) {
            browser.driver.executeScript("location.hash = arguments[0]", address);
            String screen = address.equals("#/") ? "season" : address.split("/", -1)[2];
            person.see("main[data-shown=" + screen + "][data-loaded]");
            if (screen.equals("run")) {
                review(browser, person);
            }
            person.shot(device + "-" + screen);
            Object wide = browser.driver.executeScript(
                    "return document.documentElement.scrollWidth - document.documentElement.clientWidth");
            if (((Number) wide).intValue() > 0) {
                faults.add(screen + " is " + wide + " px too wide");
            }
            // In both languages: the page in English on a desk, in Spanish on a phone.
            if (device.equals("desk") || device.equals("phone-es")) {
                faults.addAll(axe(browser, screen));
            }
        }
        assertEquals(List.of(), faults, device);
        assertEquals(List.of(), browser.console(), device);
    }

    /** The review in the page speaks the page's language. */
    private static void review(Browser browser, Person person) {
        String language = "return document.documentElement.lang";
        Object expected = browser.driver.executeScript(language);
        browser.driver.switchTo().frame(person.see("main[data-loaded=results] iframe"));
        person.see("html[data-ready]");
        assertEquals(expected, browser.driver.executeScript(language));
        browser.driver.switchTo().defaultContent();
    }

    /** Tab reaches the steps and Enter opens one. */
    private static void keyboard(Browser browser, Person person) {
        browser.driver.executeScript("location.hash = '#/field/logs/Sample%20plugged%20row'");
        person.see("main[data-shown=logs][data-loaded]");
        browser.driver.executeScript("document.querySelector('.brand').focus()");
        for (int i = 0; i < 20; i++) {
            browser.driver.switchTo().activeElement().sendKeys(org.openqa.selenium.Keys.TAB);
            String text = browser.driver.switchTo().activeElement().getText();
            if (text.equals("Columns")) {
                browser.driver.switchTo().activeElement().sendKeys(org.openqa.selenium.Keys.ENTER);
                break;
            }
        }
        assertTrue(person.see("main[data-shown=columns][data-loaded]").isDisplayed());
    }

    @SuppressWarnings("unchecked")
    private static List<String> axe(Browser browser, String screen) throws IOException {
        if (!Boolean.TRUE.equals(browser.driver.executeScript("return typeof axe === 'object'"))) {
            browser.driver.executeScript(script());
        }
        List<String> found = (List<String>)
                browser.driver.executeAsyncScript(
                        "var done = arguments[arguments.length - 1];"
                                + "axe.run(document, {iframes: false, runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']})"
                                + ".then(function (r) { done(r.violations.map(function (v) {"
                                + "return v.id + ' at ' + v.nodes[0].target.join(' ') + ': ' + v.nodes[0].failureSummary; })); });");
        return found.stream().map(each -> screen + ": " + each).toList();
    }

    private static String script() throws IOException {
        try (InputStream in = WorkbenchScreensTest.class.getResourceAsStream("/axe.min.js")) {
            if (in == null) {
                throw new IllegalStateException("axe.min.js is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
