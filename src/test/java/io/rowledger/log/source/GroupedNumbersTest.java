package io.rowledger.log.source;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GroupedNumbersTest {
    /** Styles of the Unicode CLDR: English, German, French and Swiss; NaN where a text has two readings or none. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '"',
            value = {
                "1,234.5; .; 1234.5",
                "-12,345,678; .; -12345678",
                "1,234.; .; 1234",
                "1.234,5; ','; 1234.5",
                "1.234.567; ','; 1234567",
                "1 234,5; ','; 1234.5",
                "1'234.5; .; 1234.5",
                "4,395; .; NaN",
                "4.395; ','; NaN",
                "1,23,456.5; .; NaN",
                "1234,567.5; .; NaN",
                "1,234,5; .; NaN",
            })
    void thousands_are_read_where_no_other_reading_is_left(String text, String mark, double expected) {
        assertEquals(expected, GroupedNumbers.parse(text, mark.replace("'", "").charAt(0)));
    }
}
