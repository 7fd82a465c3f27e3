package io.rowledger.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.export.Cells;
import io.rowledger.export.PassesCsv;
import io.rowledger.export.RowsCsv;
import io.rowledger.output.Outputs;
import io.rowledger.report.common.HandMadeIntervals;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** Figures worked by hand from the job described at {@link SyntheticJob}. */
class TablesTest {
    private static List<CSVRecord> read(Outputs.Content content) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        content.write(out);
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.endsWith("\r\n"), "RFC 4180 ends a record with CR LF");
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(text))) {
            return parser.getRecords();
        }
    }

    private static final UnitFormat METRIC = new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC);
    private static final UnitFormat US = new UnitFormat(UnitSystem.US, ZoneId.of("America/Chicago"));

    private static void rows(Analysis a, UnitFormat format, OutputStream out) throws IOException {
        RowsCsv.write(
                a.rig().products(), a.rates().rows(), a.intervals(), a.log().metering(), format, out);
    }

    private static void passes(Analysis a, UnitFormat format, OutputStream out) throws IOException {
        PassesCsv.write(a.rig().products(), a.track().passes(), a.rates(), a.intervals(), format, out);
    }

    @Test
    void rows_read_back_as_they_were_computed() throws IOException {
        List<CSVRecord> rows = read(out -> rows(new SyntheticJob().build(), METRIC, out));
        assertEquals(10, rows.size());
        CSVRecord row7 = rows.get(6);
        assertEquals("7", row7.get("row"));
        assertEquals("0.2", row7.get("swept_area[ha]"));
        assertEquals("0.1", row7.get("applied_area[ha]"));
        assertEquals("1.75", row7.get("turn_error_remaining_mean_abs[%]"));
        assertEquals("40", row7.get("uan.volume[L]"));
        assertEquals("80", row7.get("uan.target_volume[L]"));
        assertEquals("400", row7.get("uan.mean_rate[L/ha]"));
        assertEquals("-50", row7.get("uan.deviation[%]"));
    }

    /** By hand: 2,000 m² / 4,046.8564224 m²/ac, 40 L / 3.785411784 L/gal (NIST SP 811), and one by the other for 1,000 m². */
    @Test
    void rows_and_passes_are_in_the_units_and_the_zone_of_the_reports() throws IOException {
        Analysis a = new SyntheticJob().build();
        CSVRecord row7 = read(out -> rows(a, US, out)).get(6);
        assertEquals("0.4942", row7.get("swept_area[ac]"));
        assertEquals("10.567", row7.get("uan.volume[gal]"));
        assertEquals("42.76", row7.get("uan.mean_rate[gal/ac]"));
        CSVRecord pass6 = read(out -> passes(a, US, out)).get(5);
        assertEquals("2026-06-14T08:12:30-05:00", pass6.get("start"));
        // 250 m / 0.3048 m/ft.
        assertEquals("820.2", pass6.get("length[ft]"));
    }

    @Test
    void passes_read_back_as_they_were_computed() throws IOException {
        List<CSVRecord> passes =
                read(out -> passes(new SyntheticJob().withSecondProduct().build(), METRIC, out));
        CSVRecord pass6 = passes.get(5);
        assertEquals("6", pass6.get("pass"));
        assertEquals("2026-06-14T13:12:30Z", pass6.get("start"));
        assertEquals("250", pass6.get("length[m]"));
        assertEquals("180", pass6.get("heading[deg]"));
        assertEquals("72.48", pass6.get("uan.volume[L]"));
        assertEquals("-9.4", pass6.get("uan.deviation[%]"));
        assertEquals("8", pass6.get("ats.volume[L]"));
    }

    @Test
    void bounds_stand_in_columns_after_the_figures() throws IOException {
        Analysis a = HandMadeIntervals.in(new SyntheticJob().build());
        CSVRecord row = read(out -> rows(a, METRIC, out)).get(0);
        assertEquals("uan.deviation[%]", row.getParser().getHeaderNames().get(12));
        assertEquals("0.197", row.get("swept_area_low[ha]"));
        assertEquals("0.204", row.get("applied_area_high[ha]"));
        assertEquals("78.4", row.get("uan.volume_low[L]"));
        // 0.0412 L/m² are 412 L/ha.
        assertEquals("412", row.get("uan.mean_rate_high[L/ha]"));
        assertEquals("-3", row.get("uan.deviation_low[%]"));
        CSVRecord pass = read(out -> passes(a, METRIC, out)).get(0);
        assertEquals("0.495", pass.get("swept_area_low[ha]"));
        assertEquals("204", pass.get("uan.volume_high[L]"));
        CSVRecord unknown =
                read(out -> rows(new SyntheticJob().build(), METRIC, out)).get(0);
        assertEquals("", unknown.get("uan.volume_low[L]"));
    }

    @Test
    void what_is_not_known_is_an_empty_cell() throws IOException {
        List<CSVRecord> rows =
                read(out -> rows(new SyntheticJob().withoutTarget().build(), METRIC, out));
        assertEquals("", rows.get(0).get("uan.target_volume[L]"));
        assertEquals("", rows.get(0).get("uan.deviation[%]"));
    }

    /** The openings OWASP's page "CSV Injection" names. */
    @Test
    void text_that_a_spreadsheet_would_run_is_made_harmless() {
        for (String opening : List.of("=", "+", "-", "@", "\t", "\r")) {
            assertEquals("'" + opening + "1+1", Cells.text(opening + "1+1"));
        }
        assertEquals("uan", Cells.text("uan"));
        assertEquals("", Cells.text(""));
    }

    @Test
    void cells_with_commas_quotes_and_line_ends_read_back() throws IOException {
        StringWriter out = new StringWriter();
        Cells.record(out, List.of("a,b", "say \"so\"", "two\nlines", ""));
        try (CSVParser parser = CSVFormat.RFC4180.parse(new StringReader(out.toString()))) {
            assertEquals(
                    List.of("a,b", "say \"so\"", "two\nlines", ""),
                    parser.getRecords().get(0).toList());
        }
    }

    /** Starts that a spreadsheet runs: OWASP, "CSV Injection"; and what it does behind another separator than the comma. */
    @Test
    void text_that_a_spreadsheet_would_run_is_only_text_and_other_text_stays() {
        for (String bad : List.of(
                "=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx", "\nx", "\uff1d1", "\uff0b1", "\uff0d1", "\uff20x")) {
            assertEquals("'" + bad.charAt(0), Cells.text(bad).substring(0, 2), bad);
        }
        assertEquals("North;'=1+1", Cells.text("North;=1+1"));
        assertEquals("a\"'=1", Cells.text("a\"=1"));
        assertEquals("a,'@b", Cells.text("a,@b"));
        for (String good : List.of("", "North bottom", "A-1", "5 + 3", "x=y", "a; b", "me@farm", "'=1", " =1")) {
            assertEquals(good, Cells.text(good));
        }
    }

    @Test
    void numbers_below_zero_stay_numbers() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        rows(new SyntheticJob().build(), METRIC, out);
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains(",-50,"), text);
        assertTrue(!text.contains("'"), text);
    }
}
