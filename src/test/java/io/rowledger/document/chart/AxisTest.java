package io.rowledger.document.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxisTest {
    @ParameterizedTest
    @CsvSource({"1, 1, 1", "1.2, 1, 2", "4.9, 2, 5", "5.4, 5, 10", "0.07, 0.05, 0.1", "230, 200, 500"})
    void round_numbers_are_one_two_and_five_times_a_power_of_ten(double x, double down, double up) {
        assertEquals(down, Axis.roundDown(x), 1e-12);
        assertEquals(up, Axis.roundUp(x), 1e-12);
    }

    @Test
    void a_step_puts_about_so_many_marks_on_a_span() {
        assertEquals(10, Axis.step(27, 5), 1e-12);
        assertEquals(0, Axis.decimals(10));
        assertEquals(1, Axis.decimals(0.5));
        assertEquals(2, Axis.decimals(0.02));
    }
}
