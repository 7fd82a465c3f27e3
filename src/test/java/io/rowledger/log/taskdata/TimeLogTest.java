package io.rowledger.log.taskdata;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

/**
 * Records laid out byte by byte from the record layout of ISO 11783-10 (log data binary file structure). The public question
 * "ISOBUS (ISO 11783-10) binary timelog files" (stackoverflow.com, answer 41848716) tells the order of time, position, status,
 * count and numbered values, the standard's example, and that the time is 32 bits of ms since midnight and then 16 of days.
 * From memory: the sizes of the other fields, their order and resolutions, least byte first, days from 1980-01-01.
 */
class TimeLogTest {
    private static final String SMALL = "<TIM A=\"\" D=\"4\"><PTN A=\"\" B=\"\" D=\"\"/>"
            + "<DLV A=\"0025\" B=\"\" C=\"DET-1\"/><DLV A=\"008D\" B=\"\" C=\"DET-2\"/></TIM>";

    /** The standard's example record, as quoted there: 2005-05-02T16:32:00, 51.00678, 6.03489, 1, 2 values, 0, 10, 1, 15. */
    private static final String EXAMPLE = "00348c03 2524 5804671e e4d99803 01 02 00 0a000000 01 0f000000";

    private static LogHeader header(String xml) throws IOException {
        byte[] bytes = xml.getBytes(StandardCharsets.UTF_8);
        return LogHeader.of(TaskXml.read("TLG00001.XML", new ByteArrayInputStream(bytes), "TIM"));
    }

    private static TimeLog read(String xml, String hex) throws IOException {
        LogHeader header = header(xml);
        boolean[] all = new boolean[header.values().size()];
        Arrays.fill(all, true);
        byte[] bytes = HexFormat.of().parseHex(hex.replaceAll("\\s", ""));
        return TimeLog.read(header, all, "TLG00001.BIN", new ByteArrayInputStream(bytes));
    }

    private static String message(String xml, String hex) {
        return assertThrows(UnusableInputException.class, () -> read(xml, hex)).getMessage();
    }

    @Test
    void the_standards_example_record_reads_as_the_standard_says() throws IOException {
        TimeLog log = read(SMALL, EXAMPLE);
        assertEquals(1, log.records);
        assertEquals(Instant.parse("2005-05-02T16:32:00Z").toEpochMilli(), log.clockMs[0]);
        assertEquals(510_067_800, log.north[0]);
        assertEquals(60_348_900, log.east[0]);
        assertEquals(1, log.status(0));
        assertEquals(10, log.values[0][0]);
        assertEquals(15, log.values[1][0]);
    }

    @Test
    void all_nine_position_fields_are_read_in_the_order_of_the_standard() throws IOException {
        // 2026-06-11T13:02:11.200; 41.5031124 N, 93.4987210 W; -12.345 m; RTK; PDOP 1.7; HDOP 0.9; 21 satellites;
        // 18:02:11.200 UTC; one value: number 2 is -1.
        TimeLog log = read(
                "<TIM A=\"\" D=\"4\"><PTN I=\"\" H=\"\" G=\"\" F=\"\" E=\"\" D=\"\" C=\"\" B=\"\" A=\"\"/>"
                        + "<DLV A=\"0001\" B=\"\" C=\"A\"/><DLV A=\"0002\" B=\"7\" C=\"A\"/>"
                        + "<DLV A=\"0025\" B=\"\" C=\"A\"/></TIM>",
                "001dcc02 4342 54dfbc18 363a45c8 c7cfffff 04 1100 0900 15 80c5de03 4342 01 02 ffffffff");
        assertEquals(Instant.parse("2026-06-11T13:02:11.200Z").toEpochMilli(), log.clockMs[0]);
        assertEquals(415_031_124, log.north[0]);
        assertEquals(-934_987_210, log.east[0]);
        assertEquals(4, log.status(0));
        assertEquals(9, log.hdop[0]);
        assertEquals(Instant.parse("2026-06-11T18:02:11.200Z").toEpochMilli(), log.utcMs[0]);
        assertEquals(TimeLog.NONE, log.values[0][0]);
        assertEquals(7, log.values[1][0]);
        assertEquals(-1, log.values[2][0]);
    }

    @Test
    void a_value_holds_until_a_record_has_another() throws IOException {
        TimeLog log = read(
                SMALL,
                EXAMPLE + "00348c03 2524 5804671e e4d99803 01 00"
                        + "00348c03 2524 5804671e e4d99803 01 01 01 10000000"
                        + "00348c03 2524 5804671e e4d99803 01 02 00 00000080 00 ffffff7f");
        assertArrayEquals(new int[] {10, 10, 10, Integer.MAX_VALUE}, log.values[0]);
        assertArrayEquals(new int[] {15, 15, 16, 16}, log.values[1]);
    }

    @Test
    void a_status_written_once_in_the_header_holds_for_all_records() throws IOException {
        TimeLog log =
                read("<TIM A=\"\" D=\"4\"><PTN A=\"\" B=\"\" D=\"5\"/></TIM>", "00348c03 2524 5804671e e4d99803 00");
        assertEquals(5, log.status(0));
    }

    @Test
    void a_status_that_is_not_there_is_unknown() throws IOException {
        TimeLog log =
                read("<TIM A=\"\" D=\"4\"><PTN A=\"\" B=\"\" D=\"\"/></TIM>", "00348c03 2524 5804671e e4d99803 0f 00");
        assertEquals(-1, log.status(0));
    }

    @Test
    void a_record_that_breaks_off_is_left_out_wherever_it_does() throws IOException {
        String bytes = EXAMPLE.replace(" ", "");
        TimeLog whole = read(SMALL, EXAMPLE);
        for (int cut = 2; cut < bytes.length(); cut += 2) {
            TimeLog log = read(SMALL, EXAMPLE + bytes.substring(0, cut));
            assertEquals(1, log.records);
            assertTrue(log.brokenOff);
            assertEquals(whole.clockMs[0], log.clockMs[0]);
            assertEquals(whole.values[0][0], log.values[0][0]);
            String message = message(SMALL, bytes.substring(0, cut));
            assertTrue(message.contains("a first record that breaks off"), message);
        }
        assertFalse(whole.brokenOff);
    }

    @Test
    void a_value_the_header_does_not_list_is_refused() {
        assertEquals(
                "TLG00001.BIN: found value number 2 in record 1; expected numbers below 2: so many values the header "
                        + "TLG00001.XML lists. Hint: copy the task data from the terminal again, header and binary "
                        + "file together.",
                message(SMALL, "00348c03 2524 5804671e e4d99803 01 01 02 0a000000"));
    }

    @Test
    void a_time_of_day_beyond_the_day_shows_a_header_of_another_file() {
        // 24 h and a leap second are 86,401,000 ms = 0x05265fe8.
        String message = message(SMALL, "e85f2605 2524 5804671e e4d99803 01 00");
        assertTrue(message.startsWith("TLG00001.BIN: found a time of day of 86401000 ms in record 1;"), message);
    }

    @Test
    void a_header_that_records_no_start_is_refused() {
        for (String tim : new String[] {
            "<TIM D=\"4\"/>", "<TIM A=\"2005-05-02T16:32:00\" D=\"4\"/>", "<TIM A=\"\" B=\"\" D=\"4\"/>"
        }) {
            String message = assertThrows(UnusableInputException.class, () -> header(tim))
                    .getMessage();
            assertTrue(message.contains("a time log whose records do not hold the time of start"), message);
        }
    }
}
