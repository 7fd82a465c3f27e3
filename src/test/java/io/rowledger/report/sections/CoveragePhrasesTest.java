package io.rowledger.report.sections;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.Messages;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class CoveragePhrasesTest {
    private static final Messages METRIC = Messages.english(new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC));

    private static CoveragePhrases words(double areaM2, double sliverM2, int places) {
        return new CoveragePhrases(areaM2, 0, sliverM2, places, 0, Interval.unknown(areaM2), METRIC);
    }

    private static String overlap(CoveragePhrases phrases) {
        return plain(METRIC.text(phrases.overlap()));
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    @Test
    void ground_in_places_alone_is_one_figure() {
        assertEquals("400 m² of overlap in 3 places", overlap(words(400, 0, 3)));
        assertEquals("3 places", plain(words(400, 0, 3).where()));
    }

    @Test
    void ground_in_slivers_is_told_apart_from_the_places_that_are_listed() {
        // 400 m² of which 130 m² in slivers: 270 m² are left for the list.
        assertEquals("400 m² of overlap: 270 m² in 3 places, the rest slivers", overlap(words(400, 130, 3)));
        assertEquals("3 places and slivers", plain(words(400, 130, 3).where()));
    }

    @Test
    void ground_in_slivers_alone_is_not_called_none() {
        CoveragePhrases slivers = words(41, 41, 0);
        assertEquals("41 m² of overlap, only slivers less than 15.0 cm wide", overlap(slivers));
        assertEquals("41 m²", plain(slivers.area()));
        assertEquals("slivers", slivers.where());
    }

    /** 2,338 m² of a row without a flow in the log are no sliver and no skip to drive back to. */
    @Test
    void ground_that_may_be_covered_is_not_called_skipped() {
        CoveragePhrases open = new CoveragePhrases(2338, 2338, 0, 0, 20000, Interval.unknown(2338), METRIC);
        assertEquals("0.23 ha perhaps skipped: what flowed there is not known", plain(METRIC.text(open.skipped())));
        assertEquals("not known whether skipped", open.where());
        CoveragePhrases both = new CoveragePhrases(3338, 2338, 0, 4, 20000, Interval.unknown(3338), METRIC);
        assertEquals(
                "0.10 ha skipped in 4 places, and 0.23 ha perhaps skipped: what flowed there is not known",
                plain(METRIC.text(both.skipped())));
    }

    @Test
    void nothing_is_none() {
        assertTrue(words(0, 0, 0).none());
        assertEquals("none", words(0.2, 0.2, 0).area());
        assertEquals("", words(0.2, 0.2, 0).where());
    }
}
