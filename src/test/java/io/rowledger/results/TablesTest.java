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
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
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

    @Test
    void rows_read_back_as_they_were_computed() throws IOException {
        List<CSVRecord> rows = read(out -> RowsCsv.write(new SyntheticJob().build(), out));
        assertEquals(10, rows.size());
        CSVRecord row7 = rows.get(6);
        assertEquals("7", row7.get("row"));
        assertEquals("2000", row7.get("swept_area_m2"));
        assertEquals("1000", row7.get("applied_area_m2"));
        assertEquals("1.75", row7.get("turn_error_remaining_mean_abs_pct"));
        assertEquals("40", row7.get("uan.volume_l"));
        assertEquals("80", row7.get("uan.target_volume_l"));
        assertEquals("400", row7.get("uan.mean_rate_l_per_ha"));
        assertEquals("-50", row7.get("uan.deviation_pct"));
    }

    @Test
    void passes_read_back_as_they_were_computed() throws IOException {
        List<CSVRecord> passes = read(
                out -> PassesCsv.write(new SyntheticJob().withSecondProduct().build(), out));
        CSVRecord pass6 = passes.get(5);
        assertEquals("6", pass6.get("pass"));
        assertEquals("2026-06-14T13:12:30Z", pass6.get("start"));
        assertEquals("250", pass6.get("length_m"));
        assertEquals("180", pass6.get("heading_deg"));
        assertEquals("72.48", pass6.get("uan.volume_l"));
        assertEquals("-9.4", pass6.get("uan.deviation_pct"));
        assertEquals("8", pass6.get("ats.volume_l"));
    }

    @Test
    void bounds_stand_in_columns_after_the_figures_and_old_columns_stay_where_they_were() throws IOException {
        Analysis a = HandMadeIntervals.in(new SyntheticJob().build());
        CSVRecord row = read(out -> RowsCsv.write(a, out)).get(0);
        assertEquals("deviation_pct", row.getParser().getHeaderNames().get(12).replace("uan.", ""));
        assertEquals("1970", row.get("swept_area_m2_low"));
        assertEquals("2040", row.get("applied_area_m2_high"));
        assertEquals("78.4", row.get("uan.volume_l_low"));
        // 0.0412 L/m² are 412 L/ha.
        assertEquals("412", row.get("uan.mean_rate_l_per_ha_high"));
        assertEquals("-3", row.get("uan.deviation_pct_low"));
        CSVRecord pass = read(out -> PassesCsv.write(a, out)).get(0);
        assertEquals("4950", pass.get("swept_area_m2_low"));
        assertEquals("204", pass.get("uan.volume_l_high"));
        CSVRecord unknown =
                read(out -> RowsCsv.write(new SyntheticJob().build(), out)).get(0);
        assertEquals("", unknown.get("uan.volume_l_low"));
    }

    @Test
    void what_is_not_known_is_an_empty_cell() throws IOException {
        List<CSVRecord> rows =
                read(out -> RowsCsv.write(new SyntheticJob().withoutTarget().build(), out));
        assertEquals("", rows.get(0).get("uan.target_volume_l"));
        assertEquals("", rows.get(0).get("uan.deviation_pct"));
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
        RowsCsv.write(new SyntheticJob().build(), out);
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains(",-50,"), text);
        assertTrue(!text.contains("'"), text);
    }
}
