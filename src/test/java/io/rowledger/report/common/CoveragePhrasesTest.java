package io.rowledger.report.common;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.uncertainty.Interval;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class CoveragePhrasesTest {
    private static final UnitFormat METRIC = new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC);

    private static CoveragePhrases words(double areaM2, double sliverM2, int places) {
        return new CoveragePhrases(areaM2, sliverM2, places, 0, Interval.unknown(areaM2), METRIC);
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    @Test
    void ground_in_places_alone_is_one_figure() {
        assertEquals("400 m² doubled in 3 places", plain(words(400, 0, 3).sentence("doubled")));
        assertEquals("3 places", plain(words(400, 0, 3).where()));
    }

    @Test
    void ground_in_seams_is_told_apart_from_the_places_that_are_listed() {
        // 400 m² of which 130 m² in seams: 270 m² are left for the list.
        assertEquals(
                "400 m² doubled, 270 m² of it in 3 places",
                plain(words(400, 130, 3).sentence("doubled")));
        assertEquals("3 places and seams", plain(words(400, 130, 3).where()));
    }

    @Test
    void ground_in_seams_alone_is_not_called_none() {
        CoveragePhrases slivers = words(41, 41, 0);
        assertEquals("41 m² doubled, all of it in seams thinner than 15.0 cm", plain(slivers.sentence("doubled")));
        assertEquals("41 m²", plain(slivers.area()));
        assertEquals("seams", slivers.where());
    }

    @Test
    void nothing_is_none() {
        assertTrue(words(0, 0, 0).none());
        assertEquals("none", words(0.2, 0.2, 0).area());
        assertEquals("", words(0.2, 0.2, 0).where());
    }
}
