package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.cli.Main;
import io.rowledger.workbench.Workbench;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The newcomer's path: from an empty folder and a log of unknown headers to the review, with the machine's measures on a
 * sheet of paper; then the next field with the bar that was saved.
 */
@Tag("slow")
class WorkbenchPathTest {
    private static final int MAX_CLICKS = 40;
    private static final int MAX_TYPED = 60;
    private static final int MAX_CLICKS_WITH_A_BAR = 6;

    @TempDir
    private Path folder;

    @Test
    void a_newcomer_comes_from_a_log_to_the_review_and_it_is_what_report_writes() throws IOException {
        Path log = WorkbenchLogs.unknownHeaders(folder);
        Path season = Files.createDirectory(folder.resolve("season"));
        Workbench.Settings settings = new Workbench.Settings(season, version(), Throwable::printStackTrace);
        try (Workbench workbench = Workbench.start(settings);
                Browser browser = Browser.open(folder, 1280, 800, false)) {
            Person person = new Person(browser);
            person.open(workbench.link());
            person.see("main[data-loaded=season]");
            person.shot("01-season-empty");
            columns(person, log, season);
            String driven = machine(person);
            person.click("main .primary");
            person.see("main[data-loaded=results] iframe");
            System.out.println(
                    "workbench, newcomer: " + person.clicks + " clicks, " + person.typed + " typed characters");
            person.shot("09-review");
            assertSameAreas(driven, season);
            assertTrue(person.clicks <= MAX_CLICKS, person.clicks + " clicks");
            assertTrue(person.typed <= MAX_TYPED, person.typed + " characters");

            Path next = Files.copy(log, folder.resolve("South 40.csv"));
            Files.writeString(next, Files.readString(next).replace(",41.53", ",41.54"));
            person.clicks = 0;
            person.click(".brand");
            person.see("main[data-loaded=season] .field svg");
            person.shot("10-season");
            person.drop(".drop input", List.of(next));
            person.see("main[data-loaded=logs]");
            person.shot("11-logs-with-bar");
            person.clickText("Use Bar 1");
            person.see("main[data-loaded=run]");
            person.click("main .primary");
            person.see("main[data-loaded=results] iframe");
            System.out.println("workbench, with a saved bar: " + person.clicks + " clicks");
            assertTrue(person.clicks <= MAX_CLICKS_WITH_A_BAR, person.clicks + " clicks");
            assertEquals(List.of(), browser.console());
            String own = workbench.link().substring(0, workbench.link().indexOf("/?") + 1);
            assertEquals(
                    List.of(),
                    browser.requestsBeyond(own, "data:", "blob:", "chrome:"),
                    "requests that leave the workbench");
        }
        assertSameAsReport(season, "North 40");
    }

    private static void columns(Person person, Path log, Path season) throws IOException {
        person.drop(".drop input", List.of(log));
        person.see("main[data-loaded=logs]");
        person.shot("02-logs");
        assertTrue(person.text("main").contains("5,797 records"), person.text("main"));
        assertTrue(person.sees("svg.paths path"));
        person.clickText("Sort out the columns");
        person.see("main[data-loaded=questions]");
        person.shot("03-columns");
        person.clickText("gal/min gives 4");
        person.see("main[data-loaded=columns]:not([inert])");
        person.clickText("mph: 5");
        person.see("main[data-loaded=columns]:not([inert])");
        swapped(person, season);
        long start = System.nanoTime();
        person.clickText("Check the rows");
        person.see("[data-checked]");
        System.out.println("workbench, row check of the sample: " + (System.nanoTime() - start) / 1_000_000 + " ms");
        assertTrue(person.text(".check").contains("Row 7"), person.text(".check"));
        String rig = Files.readString(season.resolve("North 40/rig.yaml"));
        assertTrue(rig.contains("flow_07[gal/min]: Ch7"), rig);
        assertTrue(rig.contains("speed[mph]: Speed"), rig);
        person.clickText("Continue");
    }

    /** Two rows change places and back; the clicks are no part of the way that is counted. */
    private static void swapped(Person person, Path season) throws IOException {
        int clicks = person.clicks;
        Path rig = season.resolve("North 40/rig.yaml");
        person.click("details.order summary");
        person.click("details.order li[value='7'] button");
        person.see("details.order:not([open])");
        person.see("main[data-loaded=columns]:not([inert])");
        String text = Files.readString(rig);
        assertTrue(text.contains("flow_07[gal/min]: Ch8") && text.contains("flow_08[gal/min]: Ch7"), text);
        person.click("details.order summary");
        person.click("details.order li[value='7'] button");
        person.see("details.order:not([open])");
        person.see("main[data-loaded=columns]:not([inert])");
        person.clicks = clicks;
    }

    private static String machine(Person person) throws IOException {
        person.see("main[data-loaded=time]");
        person.shot("04-time");
        person.waitFor("9:00:00");
        person.waitFor("9:48:18");
        assertTrue(person.text("#place").contains("41.53") && person.sees("svg.maps path"), person.text("main"));
        assertEquals("Proposed from the position: America/Chicago, Central Daylight Time.", person.text("#proposal"));
        person.clickText("Continue");
        person.see("main[data-loaded=bar]");
        person.clickText("Pull-type");
        person.clickText("30 in");
        person.clickText("One row");
        person.shot("05-bar");
        person.clickText("Continue");
        person.see("main[data-loaded=tape]");
        person.type("#rig-antenna-ahead_of_axle", "63");
        person.type("#rig-axle_to_hitch", "36");
        person.type("#rig-hitch_to_wheels", "174");
        person.type("#rig-hitch_to_drop", "232");
        person.see("[data-driven]");
        assertTrue(person.text("main").contains("By the log: "), person.text("main"));
        String driven = person.text("#drive-figures");
        leftAndCameBack(person);
        person.shot("06-tape");
        person.clickText("Continue");
        person.see("main[data-loaded=product]");
        person.clickText("UAN 32-0-0");
        person.type("#products-uan-target", "48");
        person.waitFor("lb N per acre");
        person.shot("07-product");
        person.clickText("Continue");
        person.see("main[data-loaded=run]");
        person.shot("08-run");
        return driven;
    }

    /** What was typed is still there after another screen was looked at; the clicks are no part of the way that is counted. */
    private static void leftAndCameBack(Person person) {
        int clicks = person.clicks;
        person.click("#steps a[href*='/bar/']");
        person.see("main[data-loaded=bar]");
        person.click("#steps a[href*='/tape/']");
        person.see("main[data-loaded=tape] [data-driven]");
        assertEquals("232 in", person.see("#rig-hitch_to_drop").getDomProperty("value"));
        person.clicks = clicks;
    }

    /** Skips and overlap of the screen of the lengths are those of the review, figure by figure. */
    private static void assertSameAreas(String driven, Path season) throws IOException {
        Matcher areas = Pattern.compile(": (.+) skipped, (.+) overlap$").matcher(plain(driven));
        assertTrue(areas.find(), driven);
        String review = plain(Files.readString(season.resolve("results/North 40/review.html")));
        assertTrue(review.contains(areas.group(1) + " skipped"), driven);
        assertTrue(review.contains(areas.group(2) + " of overlap"), driven);
    }

    private static String plain(String text) {
        return text.replace((char) 0xa0, ' ');
    }

    private static String version() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream stream = new PrintStream(out, true, StandardCharsets.UTF_8);
        Main.run(stream, stream, "--version");
        return out.toString(StandardCharsets.UTF_8).strip().replaceFirst("^rowledger ", "");
    }

    /** What {@code report} makes of the files that the workbench saved is the same to the byte. */
    private void assertSameAsReport(Path season, String field) throws IOException {
        Path field40 = season.resolve(field);
        Path out = folder.resolve("report");
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
        int status = Main.run(
                stream,
                stream,
                "report",
                field40.resolve(field + ".csv").toString(),
                "--rig",
                field40.resolve("rig.yaml").toString(),
                "--out",
                out.toString());
        assertEquals(0, status, said.toString(StandardCharsets.UTF_8));
        Path results = season.resolve("results").resolve(field);
        List<Path> files;
        try (Stream<Path> all = Files.walk(out)) {
            files = all.filter(Files::isRegularFile)
                    .map(out::relativize)
                    .sorted()
                    .toList();
        }
        assertTrue(files.size() > 8, files.toString());
        for (Path file : files) {
            assertArrayEquals(
                    Files.readAllBytes(out.resolve(file)), Files.readAllBytes(results.resolve(file)), file.toString());
        }
    }
}
