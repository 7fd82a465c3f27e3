package io.rowledger.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RowMetersTest {
    private static Rig rig(int count, String meters) {
        return RigReader.ofText("rig.yaml", """
                rig: {antenna: {ahead_of_axle: 1 m}, axle_to_hitch: 1 m, hitch: mounted, hitch_to_drop: 2 m}
                rows:
                  count: %d
                  spacing: 30 in
                  meters: %s
                products: {uan: {density: 11.06 lb/gal, analysis: 32-0-0, target: 42 gal/ac}}
                """.formatted(count, meters));
    }

    @Test
    void six_meters_feed_twelve_rows_in_pairs() {
        assertEquals(
                List.of(List.of(1, 2), List.of(3, 4), List.of(5, 6), List.of(7, 8), List.of(9, 10), List.of(11, 12)),
                rig(12, "[[1, 2], [3, 4], [5, 6], [7, 8], [9, 10], [11, 12]]").meters());
    }

    @Test
    void one_meter_feeds_the_whole_bar() {
        assertEquals(List.of(List.of(1, 2, 3)), rig(3, "[[1, 2, 3]]").meters());
    }

    @Test
    void rows_of_a_meter_need_not_be_neighbors_and_come_out_ascending() {
        assertEquals(
                List.of(List.of(1, 3), List.of(2, 4)),
                rig(4, "[[3, 1], [2, 4]]").meters());
    }

    @Test
    void a_meter_for_each_row_in_order_is_the_default() {
        assertEquals(List.of(), rig(3, "[1, 2, 3]").meters());
        assertEquals(List.of(List.of(2), List.of(1)), rig(2, "[[2], [1]]").meters());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            12 | 6                       | found "6"; expected a list, the rows of each meter, such as [[1, 2], [3, 4], ..., [11, 12]].
            4  | [[1, 2]]                | found no meter for rows 3, 4; expected each of the 4 rows in one meter.
            4  | [[1, 2], [3, 4, 5]]     | found row 5 in meter 2; expected rows from 1 to 4.
            4  | [[1, 2], [2, 3, 4]]     | found row 2 in meter 1 and in meter 2; expected each row in one meter.
            4  | [[1, 2], [], [3, 4]]    | found an empty list; expected the rows of each meter
            4  | [[one, 2], [3, 4]]      | found "one"; expected the rows of each meter
            """)
    void what_leaves_a_row_open_is_refused(int count, String meters, String message) {
        String text = assertThrows(UnusableInputException.class, () -> rig(count, meters))
                .getMessage();
        assertTrue(text.startsWith("rig.yaml:5:rows.meters: " + message), text);
    }
}
