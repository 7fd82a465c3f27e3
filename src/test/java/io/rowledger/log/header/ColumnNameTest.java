package io.rowledger.log.header;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ColumnNameTest {
    private static String read(String header) {
        return ColumnName.of(header)
                .map(name -> name.role().canonical()
                        + (name.unit() == null ? "" : " in " + name.unit().symbol()))
                .orElse("nothing");
    }

    @Test
    void a_quantity_is_known_under_its_plain_names() {
        assertEquals("flow_03 in gal/min", read("flow_03[gal/min]"));
        assertEquals("flow_03 in L/min", read("Row 3 flow (L/min)"));
        assertEquals("flow_03 in L/min", read("flow3_lpm"));
        assertEquals("flow_12 in oz/min", read("FLOW-ROW-12 [fl oz / min]"));
        assertEquals("flow_01 in ml/s", read("nozzle 1 flow rate (ml/s)"));
        assertEquals("ats.flow_02 in L/h", read("ats.flow_02[l/h]"));
        assertEquals("flow_total in L/min", read("Total flow (L/min)"));
        assertEquals("target in L/ha", read("target_lpha"));
        assertEquals("speed in km/h", read("Ground speed kmh"));
        assertEquals("speed in kn", read("SOG (kn)"));
        assertEquals("yaw_rate in deg/s", read("yaw rate [\u00b0/s]"));
        assertEquals("roll in rad", read("roll[rad]"));
        assertEquals("pressure in kPa", read("pressure[kPa]"));
        assertEquals("pressure_04 in bar", read("pressure_04[bar]"));
        assertEquals("on_07", read("on_07"));
        assertEquals("on_07", read("Row 7 on"));
        assertEquals("time in s", read("epoch_s"));
        assertEquals("time in ms", read("epoch_ms"));
        assertEquals("time", read("UTC Time"));
        assertEquals("lat", read(" Latitude "));
        assertEquals("fix", read("GPS quality"));
    }

    /** Sections that are off count as skipped ground: a column of them is not to be overlooked. */
    @Test
    void sections_are_known_by_their_state_or_by_their_number_alone() {
        assertEquals("on_02", read("Section Status 2"));
        assertEquals("on_02", read("Boom Section 2 On/Off"));
        assertEquals("on_11", read("Section 11"));
        assertEquals("on_01", read("Boom 1"));
        assertEquals("flow_03 in gal/min", read("Section 3 (gal/min)"));
        assertEquals("row", read("Section"));
        assertEquals("nothing", read("Status"));
    }

    @Test
    void totals_of_the_whole_bar_are_known() {
        assertEquals("volume_total in gal", read("Total Applied (gal)"));
        assertEquals("volume_total in L", read("Total Volume [L]"));
        assertEquals("volume_total in gal", read("Total Flow (gal)"));
        assertEquals("flow_total in gal/min", read("Total Flow (gal/min)"));
        assertEquals("volume in gal", read("Gallons Applied"));
        assertEquals("volume in gal", read("uan.Gallons").replace("uan.", ""));
        assertEquals("volume_total in gal", read("Total gallons applied"));
        assertEquals("volume in gal", read("Flow (gal)"));
        assertEquals("nothing", read("Gallons per acre"));
    }

    @Test
    void a_plural_is_a_volume_and_no_flow_per_second() {
        for (String unit : List.of("gals", "gallons", "US gallons", "liters", "litres", "ounces", "quarts", "pints")) {
            assertTrue(read("flow_03[" + unit + "]").startsWith("volume_03 in "), unit);
        }
        assertEquals("volume_03 in gal", read("Row 3 (gallons)"));
        assertEquals("flow_03 in gal/s", read("flow_03_gal_s"));
        assertEquals("flow_03 in gal/s", read("flow_03[gps]"));
        assertEquals("flow_03 in L/s", read("flow_03[ls]"));
    }

    @Test
    void volumes_counts_helpers_and_odd_places_of_the_unit_are_known() {
        assertEquals("volume_since_last_03 in gal", read("row 3 volume since last [gal]"));
        assertEquals("volume_total_03 in L", read("Nozzle 3 Total (L)"));
        assertEquals("volume_03 in gal", read("flow_03[gal]"));
        assertEquals("count_03", read("count_03"));
        assertEquals("count_total_12", read("Total pulses 12"));
        assertEquals("flow_03 in gal/min", read("Flow (gal/min) row 3"));
        assertEquals("flow_03 in gal/min", read("Row 3, flow (gpm)"));
        assertEquals("flow_03 in gal/min", read("Row 3 [gpm]"));
        assertEquals("flow_03 in gal/min", read("r3 rate gpm"));
        assertEquals("row", read("Row No."));
        assertEquals("gps_week", read("GPS Week Number"));
        assertEquals("time_of_week in ms", read("iTOW_ms"));
        assertEquals("time in us", read("timestamp_us"));
        assertEquals("lat_side", read("N/S"));
        assertEquals("course in deg", read("Track made good (deg)"));
    }

    @Test
    void what_only_resembles_a_quantity_is_left_alone() {
        for (String header : List.of("latency", "downtime", "overflow_01", "location", "onset", "flow_001234", "")) {
            assertEquals("nothing", read(header), header);
        }
    }

    @Test
    void a_word_that_begins_like_a_name_is_another_word_unless_a_unit_stands_apart() {
        // "t" is a tonne, and no unit of an angle.
        assertTrue(ColumnName.of("latt").isEmpty());
        assertTrue(ColumnName.of("lat t").isPresent());
        assertTrue(ColumnName.of("speedmph").isPresent());
    }

    @Test
    void a_missing_unit_is_missing_and_an_unknown_one_is_kept_for_the_message() {
        ColumnName bare = ColumnName.of("flow_01").orElseThrow();
        assertTrue(bare.unit() == null && bare.unitText().isEmpty());
        ColumnName odd = ColumnName.of("flow_01[firkin/min]").orElseThrow();
        assertTrue(odd.unit() == null && odd.unitText().equals("firkin/min"));
    }
}
