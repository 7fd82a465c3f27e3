package io.rowledger.log.taskdata;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.TestNotes;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Task data of a bar of two sections, written by hand; every bad one with its message. */
@Tag("slow")
class TaskDataTest {
    private static final String DEVICES = """
            <DVC A="DVC-1" B="Bar">
            <DET A="DET-1" B="1" C="1" D="Bar" E="0" F="0"/>
            <DET A="DET-2" B="2" C="2" D="Liquid" E="1" F="1"/>
            <DET A="DET-3" B="3" C="4" D="" E="1" F="2"><DOR A="21"/><DOR A="23"/></DET>
            <DET A="DET-4" B="4" C="4" D="" E="2" F="2"><DOR A="22"/><DOR A="23"/></DET>
            <DPT A="21" B="0087" C="762"/>
            <DPT A="22" B="0087" C="-762"/>
            <DPT A="23" B="0043" C="1524"/>
            </DVC>
            """;
    private static final String TASK =
            "<TSK A=\"TSK-1\" B=\"Side-dress\" G=\"4\"><TIM A=\"2026-06-11T13:02:00\" D=\"4\"/><TLG A=\"TLG00001\" C=\"1\"/></TSK>";
    /** Section 4 is the left one. */
    private static final String HEADER = "<TIM A=\"\" D=\"4\"><PTN A=\"\" B=\"\" D=\"\"/>"
            + "<DLV A=\"0025\" B=\"\" C=\"DET-3\"/><DLV A=\"0025\" B=\"\" C=\"DET-4\"/></TIM>";
    /** Flows of 76,543 mm³/s on the right (0x00012aff) and 81,000 (0x00013c68) on the left, then on the right 0. */
    private static final String RECORDS = "001dcc02 4342 54dfbc18 363a45c8 04 02 00 ff2a0100 01 683c0100"
            + "e820cc02 4342 64dfbc18 363a45c8 04 01 00 00000000";

    @TempDir
    Path folder;

    private static String main(String inside) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<ISO11783_TaskData VersionMajor=\"4\" VersionMinor=\"3\""
                + " DataTransferOrigin=\"2\">\n" + inside + "</ISO11783_TaskData>\n";
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private Path bin(String name, String hex) throws IOException {
        return Files.write(folder.resolve(name), HexFormat.of().parseHex(hex.replaceAll("\\s", "")));
    }

    private Path good() throws IOException {
        write("TASKDATA.XML", main(DEVICES + TASK));
        write("TLG00001.XML", HEADER);
        bin("TLG00001.BIN", RECORDS);
        return folder;
    }

    private static String message(Path path) {
        return message(path, 0);
    }

    private static String message(Path path, int rows) {
        return assertThrows(UnusableInputException.class, () -> TaskData.read(path, rows))
                .getMessage();
    }

    private void starts(String expected, String message) {
        assertTrue(message.startsWith(expected), message);
    }

    private void contains(String expected, String message) {
        assertTrue(message.contains(expected), message);
    }

    @Test
    void sections_are_counted_from_the_left_and_no_figure_is_rounded() throws IOException {
        TaskData.Reading reading = TaskData.read(good(), 2);
        TaskLog log = reading.logs().get(0);
        assertEquals(List.of("time", "lat", "lon", "fix", "flow_01[ml/s]", "flow_02[ml/s]"), log.headers());
        assertArrayEquals(
                new String[] {"2026-06-11T13:02:11.200", "41.5031124", "-93.4987210", "4", "81.000", "76.543"},
                log.fields(0));
        assertArrayEquals(
                new String[] {"2026-06-11T13:02:12.200", "41.5031140", "-93.4987210", "4", "81.000", "0.000"},
                log.fields(1));
    }

    @Test
    void the_folder_above_the_file_a_time_log_and_a_zip_of_it_all_give_the_same() throws IOException {
        Path inner = Files.createDirectory(folder.resolve("TASKDATA"));
        for (String name : List.of("TASKDATA.XML", "TLG00001.XML", "TLG00001.BIN")) {
            good();
            Files.move(folder.resolve(name), inner.resolve(name.toLowerCase(java.util.Locale.ROOT)));
            Files.deleteIfExists(folder.resolve(name));
        }
        Files.deleteIfExists(folder.resolve("TASKDATA.XML"));
        Path zip = folder.resolve("job.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            for (String name : List.of("taskdata.xml", "tlg00001.xml", "tlg00001.bin")) {
                out.putNextEntry(new ZipEntry("card/TaskData/" + name.toUpperCase(java.util.Locale.ROOT)));
                out.write(Files.readAllBytes(inner.resolve(name)));
            }
        }
        TaskLog plain = TaskData.read(inner, 2).logs().get(0);
        for (Path path : List.of(folder, inner.resolve("taskdata.xml"), inner.resolve("tlg00001.bin"), zip)) {
            assertTrue(TaskData.is(path), path.toString());
            TaskData.Reading reading = TaskData.read(path, 2);
            TaskLog log = reading.logs().get(0);
            assertEquals(plain.headers(), log.headers());
            assertArrayEquals(plain.fields(1), log.fields(1));
            assertEquals(plain.sha256(), log.sha256());
            assertEquals(2, reading.others().size());
        }
    }

    @Test
    void other_files_are_no_task_data() throws IOException {
        assertFalse(TaskData.is(folder));
        assertFalse(TaskData.is(write("log.csv", "time,lat,lon\n")));
        assertFalse(TaskData.is(folder.resolve("not-there.csv")));
    }

    @Test
    void parts_in_files_of_their_own_are_read_with_the_rest() throws IOException {
        good();
        write("TASKDATA.XML", main("<XFR A=\"DVC00001\" B=\"1\"/>" + TASK));
        write("DVC00001.XML", "<XFC>" + DEVICES + "</XFC>");
        TaskData.Reading reading = TaskData.read(folder, 2);
        assertEquals("81.000", reading.logs().get(0).fields(0)[4]);
        assertEquals(3, reading.others().size());
        Files.delete(folder.resolve("DVC00001.XML"));
        starts(folder.resolve("TASKDATA.XML") + ":3:XFR: found no file DVC00001.XML beside it;", message(folder));
    }

    @Test
    void a_name_that_leads_out_of_the_folder_is_refused() throws IOException {
        good();
        write("TASKDATA.XML", main("<XFR A=\"../DVC00001\" B=\"1\"/>" + TASK));
        starts(folder.resolve("TASKDATA.XML") + ":3:XFR: found a file named \"../DVC00001\";", message(folder));
        write("TASKDATA.XML", main(DEVICES + TASK.replace("TLG00001", "../../TLG00001")));
        contains("found a time log named \"../../TLG00001\"", message(folder));
    }

    @Test
    void a_path_that_climbs_out_of_a_zip_is_refused() throws IOException {
        good();
        for (String bad : List.of("../evil.xml", "/etc/evil", "C:\\evil", "a/../../evil")) {
            Path zip = folder.resolve("job.zip");
            try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
                for (String name : List.of("TASKDATA.XML", bad)) {
                    out.putNextEntry(new ZipEntry(name));
                    out.write(Files.readAllBytes(folder.resolve("TASKDATA.XML")));
                }
            }
            starts(zip + ": found a zip file with the path " + bad + " in it;", message(zip));
        }
    }

    @Test
    void a_zip_that_swells_is_refused_before_it_does() throws IOException {
        good();
        Path zip = folder.resolve("job.zip");
        byte[] nothing = new byte[1 << 20];
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            for (String name : List.of("TASKDATA.XML", "TLG00001.XML")) {
                out.putNextEntry(new ZipEntry(name));
                out.write(Files.readAllBytes(folder.resolve(name)));
            }
            out.putNextEntry(new ZipEntry("TLG00001.BIN"));
            for (int i = 0; i < 200; i++) {
                out.write(nothing);
            }
        }
        assertTrue(message(zip).contains("unpacks to more than 200 times its size"), message(zip));
    }

    @Test
    void a_document_type_is_refused() throws IOException {
        good();
        write(
                "TASKDATA.XML",
                "<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY a \"b\"><!ENTITY c SYSTEM \"file:///etc/passwd\">]>"
                        + "<ISO11783_TaskData>&a;&c;</ISO11783_TaskData>");
        contains("found a document type or an entity of its own", message(folder));
    }

    @Test
    void broken_xml_is_named_by_line_and_column() throws IOException {
        good();
        write("TASKDATA.XML", "<ISO11783_TaskData>\n<DVC A=\"DVC-1\">\n</ISO11783_TaskData>");
        starts(folder.resolve("TASKDATA.XML") + ":3:3: found text that is no well-formed XML;", message(folder));
    }

    @Test
    void another_xml_is_named_by_what_it_begins_with() throws IOException {
        good();
        write("TASKDATA.XML", "<kml/>");
        contains("found XML that begins with <kml>", message(folder));
    }

    @Test
    void elements_nested_without_end_are_refused() throws IOException {
        good();
        write("TASKDATA.XML", "<ISO11783_TaskData>" + "<X>".repeat(100_000));
        contains("found elements nested 41 deep", message(folder));
    }

    @Test
    void a_device_that_is_part_of_itself_is_refused() throws IOException {
        good();
        write("TASKDATA.XML", main(DEVICES.replace("F=\"0\"", "F=\"2\"") + TASK));
        contains("part of itself", message(folder));
    }

    @Test
    void a_missing_file_of_a_time_log_is_named() throws IOException {
        for (String name : List.of("TLG00001.BIN", "TLG00001.XML")) {
            good();
            Files.delete(folder.resolve(name));
            starts(
                    folder.resolve("TASKDATA.XML") + ": found no file " + name + ", which TSK-1 refers to;",
                    message(folder));
        }
    }

    @Test
    void values_of_an_unknown_device_element_are_passed_over_with_a_note() throws IOException {
        good();
        write(
                "TLG00001.XML",
                HEADER.replace(
                        "</TIM>", "<DLV A=\"0025\" B=\"\" C=\"DET-44\"/><DLV A=\"00FF\" B=\"\" C=\"DET-45\"/></TIM>"));
        TaskLog log = TaskData.read(folder, 2).logs().get(0);
        assertEquals("81.000", log.fields(0)[4]);
        assertEquals(
                List.of("TLG00001.XML has values of DET-44, which no device description has. They were passed over."),
                TestNotes.texts(log.notes()));
    }

    @Test
    void a_section_whose_flow_stands_at_an_unknown_element_is_asked_about() throws IOException {
        good();
        write("TLG00001.XML", HEADER.replace("DET-4", "DET-44"));
        starts(
                folder.resolve("TLG00001.XML")
                        + ": found no flow or rate for section 2 (DET-4) beside those of section 1"
                        + " (DET-3), but values of DET-44, which no device description has;",
                message(folder));
    }

    @Test
    void a_number_that_is_none_is_named_with_its_place() throws IOException {
        good();
        write("TLG00001.XML", HEADER.replace("0025", "25h"));
        contains(":DLV: found \"25h\" as number of the data dictionary (attribute A)", message(folder));
    }

    @Test
    void a_log_without_flows_says_what_it_has() throws IOException {
        good();
        write("TLG00001.XML", HEADER.replace("0025", "0007"));
        contains("has no flow or rate of a liquid but actual mass per area (DDI 7)", message(folder));
    }

    @Test
    void tasks_are_asked_for_and_chosen_by_their_time_logs() throws IOException {
        good();
        write(
                "TASKDATA.XML",
                main(DEVICES + "<PFD A=\"PFD-1\" C=\"North bottom\"/>"
                        + TASK.replace("B=\"Side", "E=\"PFD-1\" B=\"Side")
                        + TASK.replace("TSK-1", "TSK-2").replace("00001", "00002")));
        assertEquals(
                folder.resolve("TASKDATA.XML") + ": found 2 tasks: TSK-1 (Side-dress, North bottom): TLG00001; TSK-2 "
                        + "(Side-dress): TLG00002; expected one task: one job on one field. Hint: name the time logs "
                        + "of the task that is meant instead, such as " + folder.resolve("TLG00001.BIN") + ".",
                message(folder));
        assertEquals(
                2,
                TaskData.read(folder.resolve("TLG00001.BIN"), 2).logs().get(0).records());
        write("TLG00009.XML", HEADER);
        contains("found a time log that no task refers to", message(folder.resolve("TLG00009.XML")));
    }

    @Test
    void one_flow_for_the_bar_stands_beside_the_states_of_its_sections() throws IOException {
        good();
        write(
                "TLG00001.XML",
                "<TIM A=\"\" D=\"4\"><PTN A=\"\" B=\"\" D=\"\"/><DLV A=\"0025\" B=\"\" C=\"DET-2\"/>"
                        + "<DLV A=\"00A1\" B=\"\" C=\"DET-2\"/></TIM>");
        // Both sections on: 01 01 in bits.
        bin("TLG00001.BIN", RECORDS.replace("683c0100", "05000000"));
        TaskData.Reading reading = TaskData.read(folder, 1);
        assertEquals(
                List.of("time", "lat", "lon", "fix", "flow_01[ml/s]"),
                reading.logs().get(0).headers());
        assertTrue(TestNotes.texts(reading.notes()).get(0).startsWith("The log has one flow for the whole bar"));
        TaskLog bySection = TaskData.read(folder, 2).logs().get(0);
        assertEquals(List.of("time", "lat", "lon", "fix", "on_01", "on_02", "flow[ml/s]"), bySection.headers());
        assertEquals(List.of("1", "1", "76.543"), List.of(bySection.fields(0)).subList(4, 7));
        // The left one off: one outlet as wide as the bar would count its ground.
        bin("TLG00001.BIN", RECORDS.replace("683c0100", "04000000"));
        contains("only some of the 2 sections on in 100% of the records", message(folder, 1));
    }

    @Test
    void a_rate_per_area_is_a_flow_only_with_a_width() throws IOException {
        good();
        write(
                "TLG00001.XML",
                HEADER.replace("0025", "0002").replace("</TIM>", "<DLV A=\"018D\" B=\"\" C=\"DET-1\"/></TIM>"));
        // 400 L/ha = 4,000,000 of 0.01 mm3/m2 (0x003d0900), 2.5 m/s (0x000009c4), 1.524 m:
        // 0.04 L/m2 x 1.524 m x 2.5 m/s = 0.1524 L/s.
        bin(
                "TLG00001.BIN",
                "001dcc02 4342 54dfbc18 363a45c8 04 03 00 00093d00 01 00000000 02 c4090000"
                        + "e820cc02 4342 64dfbc18 363a45c8 04 00");
        TaskLog log = TaskData.read(folder, 2).logs().get(0);
        assertEquals(
                List.of("time", "lat", "lon", "fix", "speed[m/s]", "flow_01[ml/s]", "flow_02[ml/s]"), log.headers());
        assertEquals("0", log.fields(1)[5]);
        assertEquals("152.400000", log.fields(1)[6]);
        write("TASKDATA.XML", main(DEVICES.replace("0043", "0046") + TASK));
        assertEquals("152.400000", TaskData.read(folder, 2).logs().get(0).fields(1)[6]);
        write("TASKDATA.XML", main(DEVICES.replace("0043", "00FF") + TASK));
        contains("section 2 (DET-4) without a working width", message(folder));
    }

    @Test
    void the_receivers_time_takes_the_terminals_to_utc() throws IOException {
        good();
        write("TLG00001.XML", HEADER.replace("D=\"\"/>", "D=\"\" H=\"\" I=\"\"/>"));
        // 18:02:11.237 and 18:02:12.181 UTC beside 13:02:11.200 and 13:02:12.200: the receiver's time jitters, the
        // middle
        // difference (the later of two) goes.
        bin(
                "TLG00001.BIN",
                "001dcc02 4342 54dfbc18 363a45c8 04 a5c5de03 4342 00"
                        + "e820cc02 4342 54dfbc18 363a45c8 04 55c9de03 4342 00");
        TaskLog log = TaskData.read(folder, 2).logs().get(0);
        assertEquals("2026-06-11T18:02:11.181Z", log.fields(0)[0]);
        assertEquals("2026-06-11T18:02:12.181Z", log.fields(1)[0]);
    }

    @Test
    void a_zone_in_the_tasks_own_times_takes_the_terminals_to_utc() throws IOException {
        good();
        write("TASKDATA.XML", main(DEVICES + TASK.replace("13:02:00\"", "13:02:00-05:00\"")));
        assertEquals(
                "2026-06-11T18:02:11.200Z",
                TaskData.read(folder, 2).logs().get(0).fields(0)[0]);
    }

    @Test
    void condensed_work_states_go_to_the_sections_from_the_left() throws IOException {
        good();
        write(
                "TLG00001.XML",
                HEADER.replace(
                        "</TIM>", "<DLV A=\"00A1\" B=\"\" C=\"DET-2\"/><DLV A=\"008D\" B=\"\" C=\"DET-2\"/></TIM>"));
        // 0x04 = 01 00: the left one (lowest bits) off, the next on. Then 0x0e = 11 10: error and not there.
        bin(
                "TLG00001.BIN",
                "001dcc02 4342 54dfbc18 363a45c8 04 02 02 04000000 03 01000000"
                        + "e820cc02 4342 64dfbc18 363a45c8 04 02 02 0e000000 03 00000000");
        TaskLog log = TaskData.read(folder, 2).logs().get(0);
        assertEquals(
                List.of("time", "lat", "lon", "fix", "down", "on_01", "on_02", "flow_01[ml/s]", "flow_02[ml/s]"),
                log.headers());
        assertEquals(List.of("1", "0", "1"), List.of(log.fields(0)).subList(4, 7));
        assertEquals(List.of("0", "", ""), List.of(log.fields(1)).subList(4, 7));
    }

    @Test
    void the_speed_of_a_rate_comes_from_the_positions_where_none_is_logged() throws IOException {
        good();
        write("TLG00001.XML", HEADER.replace("0025", "0002"));
        StringBuilder hex = new StringBuilder();
        double[] lat = new double[5];
        double[] lon = new double[5];
        for (int i = 0; i < 5; i++) {
            // 250 of 1e-7 degrees north and 300 east each second.
            int north = 415_031_124 + 250 * i;
            int east = -934_987_210 + 300 * i;
            lat[i] = north * 1e-7;
            lon[i] = east * 1e-7;
            hex.append(little(46_931_200 + 1000 * i))
                    .append("4342")
                    .append(little(north))
                    .append(little(east));
            hex.append(i == 0 ? "0402 00 00093d00 01 00093d00" : "0400");
        }
        bin("TLG00001.BIN", hex.toString());
        TaskLog log = TaskData.read(folder, 2).logs().get(0);
        assertTrue(
                TestNotes.texts(log.notes()).get(0).endsWith("the speed from the positions."),
                TestNotes.texts(log.notes()).toString());
        for (int i = 1; i < 4; i++) {
            // GeographicLib (Karney 2013) says how far it is from a second before to a second after.
            double metres = Geodesic.WGS84.Inverse(lat[i - 1], lon[i - 1], lat[i + 1], lon[i + 1]).s12;
            // 400 L/ha = 40 ml/m2 over 1.524 m.
            assertEquals(40 * 1.524 * metres / 2, Double.parseDouble(log.fields(i)[4]), 1e-4);
        }
    }

    private static String little(int value) {
        return String.format(java.util.Locale.ROOT, "%08x", Integer.reverseBytes(value));
    }

    @Test
    void functions_side_by_side_share_a_bar_and_functions_over_each_other_put_down_a_product_each() throws IOException {
        good();
        String two = DEVICES.replace(
                "<DET A=\"DET-4\" B=\"4\" C=\"4\" D=\"\" E=\"2\" F=\"2\">",
                "<DET A=\"DET-5\" B=\"5\" C=\"2\" D=\"ATS\" E=\"2\" F=\"1\"/>\n"
                        + "<DET A=\"DET-4\" B=\"4\" C=\"4\" D=\"\" E=\"2\" F=\"5\">");
        write("TASKDATA.XML", main(two + TASK));
        assertEquals(
                List.of("flow_01[ml/s]", "flow_02[ml/s]"),
                TaskData.read(folder, 2).logs().get(0).headers().subList(4, 6));
        write("TASKDATA.XML", main(two.replace("-762", "762") + TASK));
        assertEquals(
                List.of("liquid.flow_01[ml/s]", "ats.flow_01[ml/s]"),
                TaskData.read(folder, 1).logs().get(0).headers().subList(4, 6));
        write("TASKDATA.XML", main(two.replace("0087", "00FF") + TASK));
        contains("found flows of 2 functions (DET-2, DET-5) and no offsets", message(folder));
    }

    @Test
    void sections_without_an_order_are_asked_about() throws IOException {
        good();
        String same = DEVICES.replace("C=\"-762\"", "C=\"762\"");
        write("TASKDATA.XML", main(same + TASK));
        TaskData.Reading numbered = TaskData.read(folder, 2);
        assertEquals("76.543", numbered.logs().get(0).fields(0)[4]);
        assertTrue(
                TestNotes.texts(numbered.logs().get(0).notes()).get(0).contains("Rows were counted by element number"));
        write("TASKDATA.XML", main(same.replace("E=\"2\"", "E=\"1\"") + TASK));
        contains("found sections without an order: section 1 (DET-4)", message(folder));
    }

    @Test
    void a_section_without_a_flow_beside_those_that_have_one_is_asked_about() throws IOException {
        good();
        write(
                "TLG00001.XML",
                HEADER.replace("<DLV A=\"0025\" B=\"\" C=\"DET-4\"/>", "<DLV A=\"00FF\" B=\"\" C=\"DET-4\"/>"));
        contains("found no flow or rate for section 2 (DET-4) beside those of section 1 (DET-3)", message(folder));
    }

    @Test
    void a_task_that_was_never_worked_on_has_no_time_log() throws IOException {
        good();
        write("TASKDATA.XML", main(DEVICES + "<TSK A=\"TSK-1\" B=\"Side-dress\" G=\"1\"/>"));
        contains("found no time log", message(folder));
    }

    @Test
    void xml_in_another_character_set_is_read_and_what_is_none_is_a_message() throws IOException {
        good();
        String latin = main(DEVICES + TASK.replace("Side-dress", "Gr\u00fcn")).replace("UTF-8", "ISO-8859-1");
        Files.write(folder.resolve("TASKDATA.XML"), latin.getBytes(StandardCharsets.ISO_8859_1));
        assertEquals(1, TaskData.read(folder, 2).logs().size());
        Files.write(
                folder.resolve("TASKDATA.XML"),
                latin.replace("ISO-8859-1", "UTF-8").getBytes(StandardCharsets.ISO_8859_1));
        contains("found text that is no well-formed XML", message(folder));
        Files.write(folder.resolve("TASKDATA.XML"), latin.getBytes(StandardCharsets.UTF_16));
        assertEquals(1, TaskData.read(folder, 2).logs().size());
        write("TASKDATA.XML", latin.replace("ISO-8859-1", "klingon"));
        contains("found the character set klingon", message(folder));
    }

    @Test
    void bytes_that_are_no_time_log_end_in_a_message() throws IOException {
        good();
        try (OutputStream out = Files.newOutputStream(folder.resolve("TLG00001.BIN"))) {
            out.write("not a time log at all".getBytes(StandardCharsets.US_ASCII));
        }
        contains("found a time of day of", message(folder));
    }
}
