package io.rowledger.rig;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lengths of months by the Gregorian calendar (ISO 8601). */
class CalendarDayTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-02-30",
                "2026-02-29",
                "1900-02-29",
                "2026-13-01",
                "2026-00-10",
                "2026-06-31",
                "2026-06-00",
                "0206-06-02",
                "2906-06-02",
                "2026-02-30T10:00",
                "2/30/2026",
                "13/13/2026",
                "31.11.2026"
            })
    void days_that_no_calendar_has(String day) {
        assertTrue(CalendarDay.isImpossible(day));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-02-28",
                "2024-02-29",
                "2000-02-29",
                "1998-4-9",
                "2026-06-02T10:00:00Z",
                "6/2/2026",
                "30/6/2026",
                "30.6.2026",
                "early June",
                "",
                "North 40",
                "12-34-0",
                "28-0-0",
                "2026"
            })
    void days_and_other_texts(String text) {
        assertFalse(CalendarDay.isImpossible(text));
    }
}
