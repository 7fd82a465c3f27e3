package io.rowledger.report.season;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.document.text.Messages;
import io.rowledger.rate.NutrientKg;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class LedgerCellsTest {
    private static final LedgerCells CELLS =
            new LedgerCells(new Messages(new UnitFormat(UnitSystem.US, ZoneOffset.UTC)));

    private static SeasonJob job(String zone, String start, String end) {
        return new SeasonJob(
                "north",
                List.of("ab"),
                "",
                "North",
                "Corn",
                ZoneId.of(zone),
                Instant.parse(start).getEpochSecond(),
                Instant.parse(end).getEpochSecond(),
                1,
                Double.NaN,
                List.of(new SeasonJob.AppliedProduct("uan", "UAN", 1, 1, NutrientKg.NONE)),
                List.of(),
                List.of(),
                Double.NaN,
                Double.NaN,
                Interval.unknown(1),
                Interval.unknown(1),
                List.of(),
                null);
    }

    /** 9 PM in Chicago on June 1 is 2 AM of June 2 in UTC; 11 PM in Denver on June 12 is 5 AM of June 13 in UTC. */
    @Test
    void a_season_begins_and_ends_on_the_days_of_its_fields() {
        SeasonJob evening = job("America/Chicago", "2026-06-02T02:00:00Z", "2026-06-02T04:00:00Z");
        SeasonJob night = job("America/Denver", "2026-06-13T03:00:00Z", "2026-06-13T05:00:00Z");
        assertEquals("June 1, 2026", CELLS.days(List.of(evening)));
        assertEquals("June 1, 2026 to June 12, 2026", CELLS.days(List.of(night, evening)));
    }
}
