package io.rowledger.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.cli.Calls;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** review.html of a map of areas with a rate each, in a real browser: colors, and what is known of a place. */
@Tag("slow")
class AreasPageBrowserTest {
    @TempDir
    Path folder;

    /** A square of 0.001 degrees of latitude whose western part was given one rate and whose eastern part another. */
    private Path page() throws IOException {
        Path log = Files.writeString(
                folder.resolve("cover.geojson"),
                "{\"type\":\"FeatureCollection\",\"features\":[" + area(0, 30, 30) + "," + area(30, 100, 42) + "]}");
        Path rig = Path.of("sample-logs/clean/rig.yaml");
        Path out = folder.resolve("results");
        Calls run = Calls.of("report", log, "--rig", rig, "--quiet", "--out", out);
        assertEquals(0, run.status(), run.err());
        return out.resolve("review.html");
    }

    private static String area(double from, double to, double rate) {
        double west = -93.5 + from * 1e-5;
        double east = -93.5 + to * 1e-5;
        return String.format(
                Locale.ROOT,
                "{\"type\":\"Feature\",\"properties\":{\"rate[gal/ac]\":%1$.1f},\"geometry\":{\"type\":\"Polygon\","
                        + "\"coordinates\":[[[%2$.6f,41.5],[%3$.6f,41.5],[%3$.6f,41.501],[%2$.6f,41.501],[%2$.6f,41.5]]]}}",
                rate,
                west,
                east);
    }

    @Test
    void areas_have_the_colors_of_their_rates_and_tell_them_where_they_are_tapped() throws IOException {
        Path page = page();
        try (Browser browser = Browser.open(folder, 1000, 800, false)) {
            browser.openPage(page);
            ReviewPageHands hands = new ReviewPageHands(browser, false);
            assertEquals(
                    List.of("target", "applied"),
                    hands.run("return Array.from(document.getElementById('mode').options).map(o => o.value)"));
            // Far under on the left, on target to the right: PuOr's first and middle class of DeviationClasses.
            String colors = "var c = document.querySelector('canvas.field'), i = c.getContext('2d'), seen = {};"
                    + "var d = i.getImageData(0, Math.floor(c.height / 2), c.width, 1).data;"
                    + "for (var x = 0; x < d.length; x += 4) { if (d[x + 3] === 255) {"
                    + " seen[[d[x], d[x + 1], d[x + 2]].join()] = true; } } return Object.keys(seen)";
            Object seen = hands.run(colors);
            assertTrue(seen.toString().contains("247,247,247"), seen.toString());
            assertTrue(seen.toString().contains("179,88,6"), seen.toString());
            hands.run("document.getElementById('map').focus();"
                    + "document.getElementById('map').dispatchEvent(new KeyboardEvent('keydown', {key: 'Enter'}))");
            Object here = hands.run("return document.getElementById('here').textContent");
            assertTrue(here.toString().replace('\u00a0', ' ').contains("42.0 gal/ac"), here.toString());
            assertEquals(List.of(), browser.console());
        }
    }
}
