package io.rowledger.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RigReaderTest {
    private static final String PULL_TYPE = """
            rig:
              name: Twelve-row pull-type bar
              antenna:
                ahead_of_axle: 1.6 m
                right_of_center: 0 m
              axle_to_hitch: 0.9 m
              hitch: pull-type
              hitch_to_wheels: 4.4 m
              hitch_to_drop: 19 ft 4 in
              bar_right_of_center: -2 in
            rows:
              count: 12
              spacing: 30 in
              outer_share: 1
            products:
              uan:
                name: UAN 32-0-0
                density: 11.06 lb/gal
                analysis: 32-0-0
                target: 42 gal/ac
                flow_lag: 0 s
            columns: {}
            job:
              field: North bottom
              weather: {wind: 8 mph, sky: clear}
              helpers: [A, B]
            """;

    @TempDir
    Path folder;

    private Rig read(String text) throws IOException {
        return RigReader.read(Files.writeString(folder.resolve("rig.yaml"), text))
                .rig();
    }

    @Test
    void every_figure_arrives_in_si() throws IOException {
        Rig rig = read(PULL_TYPE);
        assertEquals("Twelve-row pull-type bar", rig.name());
        assertEquals(1.6, rig.antennaAheadM());
        assertEquals(0.9, rig.axleToHitchM());
        assertEquals(Hitch.PULL_TYPE, rig.hitch());
        assertEquals(4.4, rig.hitchToWheelsM());
        // 19 ft 4 in = 232 in, at 25.4 mm exactly (NIST SP 811 App. B)
        assertEquals(5.8928, rig.hitchToDropM(), 1e-12);
        assertEquals(-0.0508, rig.barRightM(), 1e-12);
        assertEquals(12, rig.rows());
        assertEquals(12 * 0.762, rig.widthM(), 1e-12);
        Product uan = rig.products().get(0);
        // lb/gal to kg/L: 119.8264 kg/m3 (NIST SP 811 App. B); gal/ac to L/ha: 9.353956 (derived from the same)
        assertEquals(11.06 * 0.1198264, uan.densityKgPerL(), 1e-6);
        assertEquals(42 * 9.353956e-4, uan.targetLPerM2(), 1e-8);
        assertEquals(0.32, uan.nitrogenFraction());
        assertEquals(0, uan.sulfurFraction());
        assertEquals(
                Map.of("field", "North bottom", "weather.wind", "8 mph", "weather.sky", "clear", "helpers", "A, B"),
                rig.job().facts());
        assertEquals(
                List.of("field", "weather.wind", "weather.sky", "helpers"),
                List.copyOf(rig.job().facts().keySet()));
    }

    @Test
    void knives_stand_one_spacing_apart_whatever_the_outside_share() throws IOException {
        for (String share : List.of("0.5", "1", "1.5")) {
            Rig rig = read(PULL_TYPE.replace("outer_share: 1", "outer_share: " + share));
            assertEquals((10 + 2 * Double.parseDouble(share)) * 0.762, rig.widthM(), 1e-12);
            assertEquals(-rig.leftM(), rig.rightM(), 1e-12);
            for (int i = 1; i < 12; i++) {
                assertEquals(
                        0.762, rig.bands().get(i).atM() - rig.bands().get(i - 1).atM(), 1e-12);
                assertEquals(rig.bands().get(i - 1).rightM(), rig.bands().get(i).leftM(), 1e-12);
            }
        }
    }

    @Test
    void a_misspelt_key_is_answered_with_the_nearest_known_one() {
        UnusableInputException e = assertThrows(
                UnusableInputException.class, () -> read(PULL_TYPE.replace("hitch_to_wheels", "hitch_to_wheel")));
        assertEquals(8, e.line());
        assertTrue(e.getMessage().contains("write hitch_to_wheels if"), e.getMessage());
    }

    @Test
    void outside_knives_stand_on_the_edge_in_the_row_or_a_spacing_in() throws IOException {
        // By hand, four rows at 30 in (0.762 m), from the bar's centre:
        // share 1:   bar 3.048 m wide, left knife in the middle of -1.524 to -0.762: -1.143
        // share 0.5: bar 2.286 m wide, left band -1.143 to -0.762, knife in the guess middle at -1.143
        // share 1.5: bar 3.810 m wide, left band -1.905 to -0.762, knife one spacing in at -1.143
        for (String share : List.of("0.5", "1", "1.5")) {
            Rig rig =
                    read(PULL_TYPE.replace("count: 12", "count: 4").replace("outer_share: 1", "outer_share: " + share));
            double outsideM = 0.762 * (1 + Double.parseDouble(share));
            Band left = rig.bands().get(0);
            Band right = rig.bands().get(3);
            assertEquals(-outsideM, left.leftM(), 1e-12);
            assertEquals(-0.762, left.rightM(), 1e-12);
            assertEquals(-1.143, left.atM(), 1e-12);
            assertEquals(1.143, right.atM(), 1e-12);
            assertEquals(outsideM, right.rightM(), 1e-12);
            assertEquals(Double.parseDouble(share), left.share());
        }
    }

    @Test
    void a_custom_bar_lists_its_outlets() throws IOException {
        int from = PULL_TYPE.indexOf("rows:");
        int to = PULL_TYPE.indexOf("products:");
        Rig rig = read(PULL_TYPE.substring(0, from) + """
                rows:
                  outlets:
                    - {at: -30 in, band: [-45 in, -15 in], section: left}
                    - {at: 0 in, band: [-15 in, 15 in]}
                    - {at: 22.5 in, band: [15 in, 30 in], section: right}
                """ + PULL_TYPE.substring(to));
        assertEquals(3, rig.rows());
        assertEquals("left", rig.bands().get(0).section());
        assertEquals(null, rig.bands().get(1).section());
        assertEquals(0.5, rig.bands().get(2).share(), 1e-12);
        assertEquals(-1.143, rig.leftM(), 1e-12);
        assertEquals(0.762, rig.rightM(), 1e-12);
    }

    @Test
    void a_carried_bar_has_no_wheel_line() throws IOException {
        Rig rig =
                read(PULL_TYPE.replace("hitch: pull-type", "hitch: mounted").replace("  hitch_to_wheels: 4.4 m\n", ""));
        assertEquals(Hitch.MOUNTED, rig.hitch());
        assertTrue(Double.isNaN(rig.hitchToWheelsM()));
    }

    @Test
    void what_may_be_left_out_takes_its_plain_meaning() throws IOException {
        Rig rig = read("""
                rig: {antenna: {ahead_of_axle: 1 m}, axle_to_hitch: 1 m, hitch: mounted, hitch_to_drop: 2 m}
                rows: {count: 2, spacing: 76 cm}
                products: {ats: {analysis: 12-0-0-26}}
                columns:
                job:
                """);
        Product ats = rig.products().get(0);
        assertEquals("ats", ats.name());
        assertEquals(0.26, ats.sulfurFraction());
        assertTrue(Double.isNaN(ats.densityKgPerL()));
        assertTrue(Double.isNaN(ats.targetLPerM2()));
        assertEquals(0, ats.flowLagS());
        assertEquals(0, rig.antennaRightM());
        assertEquals(Map.of(), rig.job().facts());
    }

    @Test
    void accuracies_are_read_and_otherwise_left_open() throws IOException {
        Rig open = read(PULL_TYPE);
        assertTrue(Double.isNaN(open.toleranceM()));
        assertTrue(Double.isNaN(open.products().get(0).meterAccuracy()));
        Rig said = read(PULL_TYPE
                .replace("rig:\n", "rig:\n  tolerance: 0.5 in\n")
                .replaceFirst("( +)analysis:", "$1meter_accuracy: 1 %\n$1density_accuracy: 0.5 %\n$1analysis:"));
        assertEquals(0.0127, said.toleranceM(), 1e-12);
        assertEquals(0.01, said.products().get(0).meterAccuracy(), 1e-12);
        assertEquals(0.005, said.products().get(0).densityAccuracy(), 1e-12);
    }

    /** A log with one meter for 16 rows at 30 in: 16 × 0.762 m = 12.192 m. */
    @Test
    void one_outlet_may_be_as_wide_as_the_bar() throws IOException {
        Rig rig = read(PULL_TYPE.replace("count: 12", "count: 1").replace("spacing: 30 in", "spacing: 40 ft"));
        assertEquals(12.192, rig.widthM(), 1e-12);
        int from = PULL_TYPE.indexOf("rows:");
        int to = PULL_TYPE.indexOf("products:");
        Rig custom = read(PULL_TYPE.substring(0, from) + """
                rows:
                  outlets: [{at: 0 in, band: [-240 in, 240 in]}]
                """ + PULL_TYPE.substring(to));
        assertEquals(12.192, custom.widthM(), 1e-12);
    }

    @Test
    void a_prescription_block_names_the_attributes_of_each_product() throws IOException {
        PrescriptionColumns one = read(PULL_TYPE + "prescription: {rate: Y99, unit: gal/ac, name: ZONE}\n")
                .hints()
                .prescription();
        assertEquals(Map.of("uan", "Y99"), one.rate());
        assertEquals(Map.of("uan", "gal/ac"), one.unit());
        assertEquals("ZONE", one.name());
        assertEquals(PrescriptionColumns.NONE, read(PULL_TYPE).hints().prescription());
    }
}
