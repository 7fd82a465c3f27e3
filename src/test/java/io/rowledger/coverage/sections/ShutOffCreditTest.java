package io.rowledger.coverage.sections;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ShutOffCreditTest {
    @Test
    void sums_go_by_row_by_pass_and_over_the_job() {
        ShutOffCredit off = new ShutOffCredit(new double[][][] {{{1, 2, 4}, {8, 16, 32}}});
        assertEquals(18, off.ofRowL(0, 2));
        assertEquals(56, off.ofPassL(0, 2));
        assertEquals(63, off.ofJobL(0));
        assertEquals(0, ShutOffCredit.nothing(1, 2, 3).ofJobL(0));
    }
}
