package io.rowledger.report.common;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class LimitsTest {
    @Test
    void a_deviation_is_marked_as_it_is_printed() {
        // 10.04 % prints as 10.0 %, 10.06 % as 10.1 %.
        assertEquals("watch", Limits.mark(-10.04));
        assertEquals("act", Limits.mark(-10.06));
        assertEquals("", Limits.mark(5.04));
        assertEquals("watch", Limits.mark(5.06));
        assertEquals("", Limits.mark(Double.NaN));
    }
}
