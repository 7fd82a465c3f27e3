package io.rowledger.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitFormatTest {
    private static final UnitFormat US = new UnitFormat(UnitSystem.US, ZoneOffset.UTC);
    private static final UnitFormat METRIC = new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC);

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    /** Units are exact by NIST Handbook 44, Appendix C; figures worked by hand from them. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "AREA          | 40468.564224  | 10.00 ac      | 4.05 ha",
                "AREA          | 4046856.4224  | 1,000.0 ac    | 404.7 ha",
                "PATCH         | 0.09290304    | 1.0 ft²       | 0.1 m²",
                "PATCH         | 92.90304      | 1,000 ft²     | 93 m²",
                "LENGTH        | 15.24         | 50.0 ft       | 15.2 m",
                "LENGTH        | 304.8         | 1,000 ft      | 305 m",
                "DIMENSION     | 9.144         | 30.00 ft      | 9.14 m",
                "SMALL_LENGTH  | 0.0127        | 0.5 in        | 1.3 cm",
                "DENSITY       | 1.325280      | 11.06 lb/gal  | 1.325 kg/L",
                "VOLUME        | 37.85411784   | 10.0 gal      | 37.9 L",
                "VOLUME        | 37854.11784   | 10,000 gal    | 37,854 L",
                "NITROGEN      | 45.359237     | 100 lb N      | 45.4 kg N",
                "SPEED         | 2.2352        | 5.0 mph       | 8.0 km/h"
            })
    void figures_come_in_the_units_people_read(QuantityKind measure, double si, String us, String metric) {
        assertEquals(us, plain(US.text(measure, si)));
        assertEquals(metric, plain(METRIC.text(measure, si)));
    }

    /** J. Camberato, Purdue Extension, 2023: 20 gal/ac of 28 % at 10.6 lb/gal is 59.4 lb N/ac. */
    @Test
    void nitrogen_of_twenty_gallons_of_28_percent_prints_as_purdue_prints_it() {
        double rateLPerM2 = QuantityKind.RATE.toSi(20, UnitSystem.US);
        double kgPerL = QuantityKind.DENSITY.toSi(10.6, UnitSystem.US) * 0.28;
        assertEquals("20.0 gal/ac", plain(US.text(QuantityKind.RATE, rateLPerM2)));
        assertEquals("59.4 lb N/ac", plain(US.text(QuantityKind.NITROGEN_RATE, rateLPerM2 * kgPerL)));
    }

    @Test
    void a_litre_per_hectare_is_a_ten_thousandth_of_a_litre_per_square_metre() {
        assertEquals("400 L/ha", plain(METRIC.text(QuantityKind.RATE, 0.04)));
        assertEquals("40.0 L/ha", plain(METRIC.text(QuantityKind.RATE, 0.004)));
    }

    @ParameterizedTest
    @CsvSource({"0.285,2,0.29", "-0.285,2,−0.29", "-0.004,2,0.00", "1234567.5,0,'1,234,568'", "999.95,1,'1,000.0'"})
    void rounding_is_as_on_paper_with_a_real_minus_and_no_minus_zero(double value, int decimals, String text) {
        assertEquals(text, US.fixed(value, decimals));
    }

    @Test
    void what_is_not_known_says_so() {
        assertEquals("not known", US.text(QuantityKind.AREA, Double.NaN));
        assertEquals("not known", US.percent(Double.NaN));
        assertEquals("not known", US.signedPercent(Double.POSITIVE_INFINITY));
        assertEquals("not known", US.clock(Double.NaN));
        assertEquals("not known", US.duration(Double.NaN));
        assertEquals("not known", US.place(Double.NaN, 1));
    }

    @ParameterizedTest
    @CsvSource({"6,+6.0%", "-50,−50.0%", "0,0.0%", "0.04,0.0%", "-0.04,0.0%", "0.05,+0.1%"})
    void a_deviation_shows_its_sign_unless_it_rounds_to_nothing(double percent, String text) {
        assertEquals(text, US.signedPercent(percent));
    }

    @ParameterizedTest
    @CsvSource({"8.4,8 s", "59.6,1 min 0 s", "725,12 min 5 s", "12300,3 h 25 min", "3599.7,1 h 0 min"})
    void durations_read_in_the_two_largest_units(double seconds, String text) {
        assertEquals(text, plain(US.duration(seconds)));
    }

    /** 1,000,000,000 s after the epoch was 2001-09-09T01:46:40Z (POSIX folklore, seen in many textbooks). */
    @Test
    void times_are_in_the_zone_asked_for() {
        UnitFormat chicago = new UnitFormat(UnitSystem.US, ZoneId.of("America/Chicago"));
        assertEquals("September 9, 2001, 1:46\u00a0AM", US.dateAndTime(1e9));
        assertEquals("1:46:40\u00a0AM", US.clock(1e9));
        assertEquals("2001-09-08", chicago.date(1e9));
        assertEquals("8:46:40\u00a0PM", chicago.clock(1e9));
    }

    @Test
    void places_can_be_pasted_into_a_phone() {
        assertEquals("44.123457, -93.000001", US.place(44.1234567, -93.0000006));
    }

    @ParameterizedTest
    @CsvSource({"0,N", "0.7,NE", "1.5707963,E", "3.1415926,S", "-1.5707963,W", "-0.3,N", "-0.5,NW", "6.2,N"})
    void headings_read_as_compass_points(double rad, String point) {
        assertEquals(point, US.compass(rad));
    }

    @Test
    void patches_below_a_tenth_of_an_acre_are_in_square_feet() {
        // A tenth of an acre is 4,356 square feet.
        assertEquals("4,349 ft²", plain(US.anyArea(404)));
        assertEquals("0.10 ac", plain(US.anyArea(405)));
        assertEquals("999 m²", plain(METRIC.anyArea(999)));
        assertEquals("0.10 ha", plain(METRIC.anyArea(1001)));
        assertEquals("< 1 ft²", plain(US.anyArea(0.05)));
        assertEquals("0.0 ft²", plain(US.anyArea(0)));
    }

    @Test
    void an_area_beside_a_larger_one_is_in_the_larger_ones_unit() {
        // 40 m² ÷ 4,046.8564224 m² = 0.00988; 405 m² is just over a tenth of an acre.
        assertEquals("0.010 ac", plain(US.areaBeside(40, 405)));
        assertEquals("0.10 ac", plain(US.areaBeside(405, 40)));
        assertEquals("431 ft²", plain(US.areaBeside(40, 404)));
        assertEquals("< 0.001 ha", plain(METRIC.areaBeside(9, 2000)));
        assertEquals("0.00 ac", plain(US.areaBeside(0, 5000)));
    }

    @Test
    void the_machines_locale_changes_nothing() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertEquals("1,234.5%", US.percent(1234.5));
            assertEquals("September 9, 2001, 1:46\u00a0AM", US.dateAndTime(1e9));
            assertEquals("12 min 5 s", plain(US.duration(725)));
            assertEquals("44.123457, -93.000001", US.place(44.1234567, -93.0000006));
        } finally {
            Locale.setDefault(before);
        }
    }

    /** JCGM 100:2008, 7.2.6: one or two digits of doubt, the figure to the same place; rounded outward, by hand. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "61.3456  | 60.95    | 61.741   | 61.3 \u00b1 0.4 ha",
                "61.3456  | 61.2096  | 61.4816  | 61.35 \u00b1 0.14 ha",
                "61.3456  | 61.2095  | 61.4817  | 61.35 \u00b1 0.14 ha",
                "61.3456  | 46.0     | 76.7     | 61 \u00b1 16 ha",
                "1234.5   | 1158     | 1311     | 1,230 \u00b1 80 ha",
                "0.4      | 0.0      | 0.62     | 0.4 ha (0.0 to 0.7 ha)",
                "19.04    | 18.997   | 19.127   | 19.04 ha (18.99 to 19.13 ha)"
            })
    void no_digit_is_shown_that_the_interval_denies(double ha, double low, double high, String text) {
        assertEquals(text, plain(METRIC.within(QuantityKind.AREA, ha * 10_000, low * 10_000, high * 10_000)));
    }

    @Test
    void a_figure_without_bounds_reads_as_ever() {
        assertEquals("4.05 ha", plain(METRIC.within(QuantityKind.AREA, 40_468.56, Double.NaN, Double.NaN)));
        assertEquals("", METRIC.bounds(QuantityKind.AREA, 40_468.56, Double.NaN, Double.NaN));
        assertEquals("not known", METRIC.within(QuantityKind.AREA, Double.NaN, 1, 2));
    }
}
