package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.sim.SmallJob;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/** Odd but usable files give a result that says, beside the figures, what it could not evaluate. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("slow")
class OddLogsTest {
    private static final int LAT = 1;
    private static final int LON = 2;

    private Path folder;
    private List<String> header;
    private String log;
    private Path rig;
    private Path boundary;

    @BeforeAll
    void simulate_a_good_log(@TempDir Path temporary) throws IOException {
        folder = temporary;
        SmallJob.writeTo(folder, 5, 80);
        log = Files.readString(folder.resolve("log.csv"));
        header = List.of(log.lines().findFirst().orElseThrow().split(","));
        assertEquals(List.of("time", "lat", "lon"), header.subList(0, 3));
        rig = folder.resolve("rig.yaml");
        boundary = folder.resolve("boundary.geojson");
    }

    @Test
    void a_bar_never_lowered_leaves_nothing_to_evaluate() throws IOException {
        int down = header.indexOf("down");
        int first = flow(1);
        Calls call = report("lifted", changed((i, fields) -> {
            fields[down] = "0";
            Arrays.fill(fields, first, first + 6, "0");
        }));
        assertEquals("The log holds no working pass: there is nothing to evaluate.", firstLine(call));
    }

    @Test
    void a_tractor_standing_still_leaves_nothing_to_evaluate() throws IOException {
        Calls call = report("still", changed((i, fields) -> {
            fields[LAT] = "41.5";
            fields[LON] = "-93.5";
        }));
        assertEquals("The log holds no working pass: there is nothing to evaluate.", firstLine(call));
    }

    @Test
    void no_flow_at_all_covers_no_ground() throws IOException {
        int first = flow(1);
        Calls call = report("zero", changed((i, fields) -> Arrays.fill(fields, first, first + 6, "0")));
        assertTrue(call.out().contains("No ground was covered"), call.out());
        assertFalse(call.out().contains("skipped"), call.out());
    }

    @Test
    void a_row_without_figures_is_named_beside_the_verdict() throws IOException {
        int fourth = flow(4);
        Calls call = report("empty-column", changed((i, fields) -> fields[fourth] = ""));
        assertTrue(call.out().contains("What row 4 put on is not known"), call.out());
    }

    @Test
    void a_boundary_that_holds_part_of_the_ground_is_doubted() throws IOException {
        // 0.0003 degrees are 25 m at this latitude, of a field 18 m wide and 80 m long or the other way round.
        String text = Pattern.compile("\\[(-?\\d+\\.\\d+), (\\d+\\.\\d+)\\]")
                .matcher(Files.readString(boundary))
                .replaceAll(m ->
                        String.format(Locale.ROOT, "[%s, %.9f]", m.group(1), Double.parseDouble(m.group(2)) + 0.0003));
        Path shifted = Files.writeString(folder.resolve("part.geojson"), text);
        Calls call = report("part", log, "--boundary", shifted);
        assertTrue(call.out().contains("of the covered ground lies outside the boundary"), call.out());
    }

    @Test
    void ground_between_two_fields_is_not_swept() throws IOException {
        double oneField = sweptM2("one", log);
        List<String> records = log.lines().toList();
        int middle = records.size() / 2;
        // 278 m further north from the middle of the log, with no pause between.
        String two = changed((i, fields) -> {
            if (i >= middle) {
                fields[LAT] = Double.toString(Double.parseDouble(fields[LAT]) + 0.0025);
            }
        });
        double twoFields = sweptM2("two", two);
        assertTrue(twoFields <= oneField && twoFields > 0.95 * oneField, twoFields + " of " + oneField);
    }

    @Test
    void two_fields_in_one_log_are_asked_about() throws IOException {
        int middle = log.lines().toList().size() / 2;
        // 0.03 degrees of latitude are 3.3 km.
        String two = changed((i, fields) -> {
            if (i >= middle) {
                fields[LAT] = Double.toString(Double.parseDouble(fields[LAT]) + 0.03);
            }
        });
        Path file = Files.writeString(folder.resolve("two-fields.csv"), two);
        Calls call = Calls.of("report", file, "--rig", rig, "--out", folder.resolve("two-fields"));
        assertEquals(2, call.status(), call.err());
        assertTrue(call.err().contains("found work in places 3,") && call.err().contains("cut the log"), call.err());
    }

    @Test
    void a_rig_file_in_an_old_code_page_keeps_its_letters() throws IOException {
        String text = Files.readString(rig).replace("North bottom", "Gr\u00fcnes Moor");
        for (Charset charset :
                List.of(Charset.forName("windows-1252"), StandardCharsets.UTF_16, StandardCharsets.UTF_8)) {
            Path own = Files.write(folder.resolve(charset.name() + ".yaml"), text.getBytes(charset));
            Path out = folder.resolve("out-" + charset.name());
            Calls call = Calls.of("report", folder.resolve("log.csv"), "--rig", own, "--out", out);
            assertEquals(0, call.status(), call.err());
            assertTrue(text(out.resolve("pass-review.pdf")).contains("Gr\u00fcnes Moor"), charset.name());
        }
    }

    @Test
    void marks_and_control_characters_in_names_do_no_harm() throws IOException {
        Path own = Files.writeString(
                folder.resolve("marks.yaml"),
                Files.readString(rig).replace("North bottom", "<b>& {{review}} \\u0007 \\uFFFF end"));
        Path out = folder.resolve("out-marks");
        Calls call = Calls.of("report", folder.resolve("log.csv"), "--rig", own, "--out", out);
        assertEquals(0, call.status(), call.err());
        assertTrue(text(out.resolve("pass-review.pdf")).contains("<b>& {{review}}"), "marks as they were written");
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    private int flow(int row) {
        int column = header.indexOf(String.format(Locale.ROOT, "flow_%02d[gal/min]", row));
        assertTrue(column > 0, "flow column of row " + row);
        return column;
    }

    private String changed(BiConsumer<Integer, String[]> change) {
        List<String> out = new ArrayList<>();
        List<String> lines = log.lines().toList();
        out.add(lines.get(0));
        for (int i = 1; i < lines.size(); i++) {
            String[] fields = lines.get(i).split(",", -1);
            change.accept(i, fields);
            out.add(String.join(",", fields));
        }
        return String.join("\n", out) + "\n";
    }

    private Calls report(String name, String text, Object... more) throws IOException {
        Path file = Files.writeString(folder.resolve(name + ".csv"), text);
        List<Object> words = new ArrayList<>(List.of("report", file, "--rig", rig, "--out", folder.resolve(name)));
        words.addAll(List.of(more));
        Calls call = Calls.of(words.toArray());
        assertEquals(0, call.status(), call.err());
        return call;
    }

    private static String firstLine(Calls call) {
        return call.out().lines().findFirst().orElseThrow();
    }

    private double sweptM2(String name, String text) throws IOException {
        report(name, text);
        return new ObjectMapper()
                .readTree(folder.resolve(name).resolve("summary.json").toFile())
                .at("/field/swept_area_m2")
                .asDouble();
    }
}
