package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The principal places of zones, from the table zone1970.tab of the IANA time zone database 2025, and places without a proposal. */
class ZoneProposalTest {
    @ParameterizedTest
    @CsvSource({
        "America/New_York, 40.714, -74.006",
        "America/Chicago, 41.85, -87.65",
        "America/Denver, 39.739, -104.984",
        "America/Phoenix, 33.448, -112.073",
        "America/Los_Angeles, 34.052, -118.243",
        "America/Edmonton, 53.55, -113.467",
        "America/Winnipeg, 49.883, -97.15",
        "America/Regina, 50.4, -104.65",
        "America/Toronto, 43.65, -79.383",
        "America/Sao_Paulo, -23.533, -46.617",
        "America/Cuiaba, -15.583, -56.083",
        "America/Argentina/Buenos_Aires, -34.6, -58.45",
        "Europe/London, 51.508, -0.125",
        "Europe/Paris, 48.867, 2.333",
        "Europe/Berlin, 52.5, 13.367",
        "Europe/Warsaw, 52.25, 21.0",
        "Europe/Kyiv, 50.433, 30.517",
        "Africa/Johannesburg, -26.25, 28.0",
        "Australia/Perth, -31.95, 115.85",
        "Australia/Adelaide, -34.917, 138.583",
        "Australia/Brisbane, -27.467, 153.033",
        "Australia/Melbourne, -37.817, 144.967",
        "Pacific/Auckland, -36.867, 174.767"
    })
    void a_principal_place_has_its_zone(String zone, double latDeg, double lonDeg) {
        assertEquals(zone, ZoneProposal.of(latDeg, lonDeg));
        assertEquals(zone, ZoneId.of(zone).getId());
    }

    @Test
    void on_the_sea_and_where_no_box_is_nothing_is_proposed() {
        assertEquals("", ZoneProposal.of(30, -40));
        assertEquals("", ZoneProposal.of(55.75, 37.6));
        assertEquals("", ZoneProposal.of(Double.NaN, 0));
    }
}
