package io.rowledger.rig;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.rig.RigCorrection.Change;
import io.rowledger.rig.RigCorrection.Corrected;
import io.rowledger.rig.RigCorrection.Line;
import io.rowledger.units.Dimension;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigCorrectionTest {
    private static final String RIG = """
            # My bar, measured in May – with the long tape.
            rig:
              antenna:
                ahead_of_axle: 1.6 m   # to the dome
              axle_to_hitch: 90 cm
              hitch: mounted
              hitch_to_drop: "19 ft 4 in"   # pin to knife
            rows:
              count: 4
              spacing: 30 in
              outer_share: 1
            products:
              uan:
                density: 11.06 lb/gal
                # no lag known
                flow_lag: 0 s
              ats: {density: 11.04 lb/gal}
            """;

    @TempDir
    Path folder;

    private Path write(String text) throws IOException {
        return Files.writeString(folder.resolve("rig.yaml"), text);
    }

    @Test
    void only_the_figures_change_and_comments_stay() throws IOException {
        Path file = write(RIG);
        byte[] before = Files.readAllBytes(file);
        // 6.5 m are 255.906 in: 21 ft 3.9 in.
        Corrected corrected = RigCorrection.of(
                file,
                List.of(
                        new Change("rig.hitch_to_drop", 6.5, Dimension.LENGTH),
                        new Change("products.uan.flow_lag", 1.234, Dimension.TIME)));
        assertEquals(
                RIG.replace("\"19 ft 4 in\"", "21 ft 3.9 in").replace("flow_lag: 0 s", "flow_lag: 1.23 s"),
                corrected.text());
        assertEquals(
                List.of(
                        new Line("rig.hitch_to_drop", 7, "19 ft 4 in", "21 ft 3.9 in"),
                        new Line("products.uan.flow_lag", 16, "0 s", "1.23 s")),
                corrected.lines());
        assertArrayEquals(before, Files.readAllBytes(file));
        Rig rig = RigReader.ofText("corrected", corrected.text());
        assertEquals(6.5, rig.hitchToDropM(), 0.0013);
        assertEquals(1.23, rig.products().get(0).flowLagS(), 1e-12);
    }

    @Test
    void lines_that_are_not_there_are_added_in_their_block() throws IOException {
        Corrected corrected = RigCorrection.of(
                write(RIG),
                List.of(
                        new Change("rig.bar_right_of_center", -0.1, Dimension.LENGTH),
                        new Change("rig.antenna.right_of_center", 0.254, Dimension.LENGTH),
                        new Change("products.ats.flow_lag", 0.5, Dimension.TIME)));
        // 0.1 m are 3.937 in.
        assertEquals(
                RIG.replace("# pin to knife\n", "# pin to knife\n  bar_right_of_center: -3.9 in\n")
                        .replace("# to the dome\n", "# to the dome\n    right_of_center: 10 in\n")
                        .replace("11.04 lb/gal}", "11.04 lb/gal, flow_lag: 0.5 s}"),
                corrected.text());
        Rig rig = RigReader.ofText("corrected", corrected.text());
        assertEquals(-0.09906, rig.barRightM(), 1e-9);
        assertEquals(0.254, rig.antennaRightM(), 1e-9);
        assertEquals(0.5, rig.products().get(1).flowLagS());
    }

    @Test
    void line_ends_of_another_system_are_kept() throws IOException {
        String text = RIG.replace("\n", "\r\n");
        Corrected corrected =
                RigCorrection.of(write(text), List.of(new Change("rig.bar_right_of_center", 0.1, Dimension.LENGTH)));
        assertEquals(
                text.replace("# pin to knife\r\n", "# pin to knife\r\n  bar_right_of_center: 3.9 in\r\n"),
                corrected.text());
    }

    @Test
    void a_figure_that_goes_by_another_ones_name_is_changed_alone() throws IOException {
        String text = RIG.replace("axle_to_hitch: 90 cm", "axle_to_hitch: &reach 90 cm")
                .replace("\"19 ft 4 in\"", "*reach");
        Corrected corrected =
                RigCorrection.of(write(text), List.of(new Change("rig.hitch_to_drop", 1.2, Dimension.LENGTH)));
        assertEquals(text.replace("*reach", "120 cm"), corrected.text());
        Rig rig = RigReader.ofText("corrected", corrected.text());
        assertEquals(0.9, rig.axleToHitchM(), 1e-12);
        assertEquals(1.2, rig.hitchToDropM(), 1e-12);
    }

    @Test
    void what_goes_by_the_name_of_a_changed_figure_keeps_the_old_one() throws IOException {
        String text = RIG.replace("\"19 ft 4 in\"", "&reach 5 m").replace("flow_lag: 0 s", "flow_lag: 0 s # so far")
                + "job: {knives: *reach}\n";
        Corrected corrected =
                RigCorrection.of(write(text), List.of(new Change("rig.hitch_to_drop", 6, Dimension.LENGTH)));
        assertEquals(text.replace("&reach 5 m", "6 m").replace("*reach", "5 m"), corrected.text());
    }

    @Test
    void an_entry_is_put_before_a_last_comma_or_comment_in_braces() throws IOException {
        Change lag = new Change("products.ats.flow_lag", 0.5, Dimension.TIME);
        String comma = RIG.replace("11.04 lb/gal}", "11.04 lb/gal,}");
        assertEquals(
                comma.replace("gal,}", "gal, flow_lag: 0.5 s,}"),
                RigCorrection.of(write(comma), List.of(lag)).text());
        String comment = RIG.replace("11.04 lb/gal}", "11.04 lb/gal # }\n    }");
        assertEquals(
                comment.replace("gal # }", "gal, flow_lag: 0.5 s # }"),
                RigCorrection.of(write(comment), List.of(lag)).text());
    }

    @Test
    void a_line_is_not_put_behind_a_text_of_several_lines() throws IOException {
        String text = RIG.replace("    flow_lag: 0 s\n", "    name: |\n      UAN\n      32-0-0\n");
        Corrected corrected =
                RigCorrection.of(write(text), List.of(new Change("products.uan.flow_lag", 0.5, Dimension.TIME)));
        assertEquals(
                text.replace("density: 11.06 lb/gal\n", "density: 11.06 lb/gal\n    flow_lag: 0.5 s\n"),
                corrected.text());
    }

    @Test
    void lines_are_those_of_the_owners_file_even_below_an_added_one() throws IOException {
        Corrected corrected = RigCorrection.of(
                write(RIG),
                List.of(
                        new Change("rig.bar_right_of_center", -0.1, Dimension.LENGTH),
                        new Change("products.uan.flow_lag", 1.2, Dimension.TIME)));
        // Counted in the text above: hitch_to_drop is line 7, flow_lag line 16.
        assertEquals(List.of(8, 16), corrected.lines().stream().map(Line::line).toList());
    }

    @Test
    void a_file_that_can_not_be_followed_or_a_figure_no_file_may_have_changes_nothing() throws IOException {
        Change side = new Change("rig.bar_right_of_center", -0.1, Dimension.LENGTH);
        String oldMac = RIG.replace("\n", "\r");
        assertEquals(new Corrected(oldMac, List.of()), RigCorrection.of(write(oldMac), List.of(side)));
        Change behindThePin = new Change("rig.hitch_to_drop", -1, Dimension.LENGTH);
        assertEquals(new Corrected(RIG, List.of()), RigCorrection.of(write(RIG), List.of(behindThePin)));
    }

    @Test
    void without_changes_the_text_is_the_same() throws IOException {
        assertEquals(new Corrected(RIG, List.of()), RigCorrection.of(write(RIG), List.of()));
    }

    /** Lengths in meters, by 1 ft = 0.3048 m and 1 in = 0.0254 m (exact). */
    @ParameterizedTest(name = "{0} becomes {2}")
    @CsvSource({
        "5.9 m, 6.524, 6.52 m",
        "590 cm, 6.524, 652 cm",
        "5900 mm, 6.5236, 6524 mm",
        "232.283 in, 6.524, 256.9 in",
        "19.36 ft, 6.524, 21.4 ft",
        "19 ft 4 in, 6.4008, 21 ft 0 in",
        "19' 4\", 6.524, 21' 4.9\"",
        "-4 in, 0.1016, 4 in",
        "4 in, -0.1016, -4 in",
        "1 ft 3 in, -0.381, -1 ft 3 in",
        "0 m, -0.001, 0 m"
    })
    void a_length_keeps_its_units(String before, double si, String after) {
        assertEquals(after, RigCorrection.written(before, new Change("x", si, Dimension.LENGTH)));
    }

    @ParameterizedTest(name = "{0} becomes {2}")
    @CsvSource({"0 s, 1.237, 1.24 s", "500 ms, 1.237, 1237 ms", "0 s, -0.5, -0.5 s"})
    void a_time_keeps_its_unit(String before, double si, String after) {
        assertEquals(after, RigCorrection.written(before, new Change("x", si, Dimension.TIME)));
    }
}
