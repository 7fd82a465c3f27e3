package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.workbench.Workbench;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a dropped log of unknown headers to the row check. */
@Tag("slow")
class WorkbenchColumnsTest {
    @TempDir
    private Path folder;

    @Test
    void a_log_of_unknown_headers_is_settled_by_choosing_between_consequences_and_its_rows_are_checked()
            throws IOException {
        Path log = WorkbenchLogs.unknownHeaders(folder);
        Path season = Files.createDirectory(folder.resolve("season"));
        Workbench.Settings settings = new Workbench.Settings(
                season, 0, "test", 600, Workbench.UploadLimits.DEFAULTS, Throwable::printStackTrace);
        try (Workbench workbench = Workbench.start(settings);
                Browser browser = Browser.open(folder, 1280, 800, false)) {
            Person person = new Person(browser);
            person.open(workbench.link());
            person.see("main[data-loaded=season]");
            person.shot("1-season-empty");
            person.drop(".drop input", List.of(log));
            person.see("main[data-loaded=logs]");
            assertTrue(person.text("main").contains("5,797 records"), person.text("main"));
            assertTrue(person.sees("svg.paths path"));
            person.shot("2-logs");
            person.clickText("Settle the columns");
            person.see("main[data-loaded=questions]");
            person.shot("3-columns");
            assertTrue(person.text("main").contains("gal/min gives 4"), person.text("main"));
            person.clickText("gal/min gives");
            person.see("main[data-loaded=columns]");
            person.shot("4-columns-settled");
            person.clickText("mph:");
            person.see("main[data-loaded=columns]:not([inert])");
            long start = System.nanoTime();
            person.clickText("Check the rows");
            person.see("[data-checked]");
            System.out.println("row check of the sample: " + (System.nanoTime() - start) / 1_000_000 + " ms; "
                    + person.clicks + " clicks so far");
            person.shot("5-check");
            assertTrue(person.text(".check").contains("Row 7"), person.text(".check"));
            String rig = Files.readString(season.resolve("North 40/rig.yaml"));
            assertTrue(rig.contains("flow_07[gal/min]: Ch7"), rig);
            assertTrue(rig.contains("speed[mph]: Speed"), rig);
            assertEquals(List.of(), browser.console());
        }
    }
}
