package io.rowledger.document.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Patterns are those of {@code src/test/resources/io/rowledger/text/sample.properties}. */
class MessagesTest {
    private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");
    private static final UnitFormat US = new UnitFormat(UnitSystem.US, CHICAGO);
    private static final Messages ENGLISH = Messages.english(US);

    @ParameterizedTest
    @CsvSource({"0, no rows", "1, one row", "2, 2 rows", "1500, '1,500 rows'"})
    void choices_go_by_the_number(long rows, String expected) {
        assertEquals(expected, ENGLISH.text("sample.choice", rows));
    }

    @Test
    void plurals_take_the_first_form_for_one_alone() {
        // 8093.7 m² / 4046.8564224 m² per acre = 2.00 ac (NIST SP 811)
        assertEquals("2 places, 2.00\u00a0ac", ENGLISH.text("sample.places", 2, Message.area(8093.7)));
        assertEquals("1 place, 2.00\u00a0ac", ENGLISH.text("sample.places", 1, Message.area(8093.7)));
        assertEquals("0 places, 2.00\u00a0ac", ENGLISH.text("sample.places", 0, Message.area(8093.7)));
    }

    @Test
    void values_follow_the_unit_system() {
        Argument length = Message.value(QuantityKind.LENGTH, 30.48);
        Messages metric = Messages.english(new UnitFormat(UnitSystem.METRIC, CHICAGO));
        assertEquals("100\u00a0ft: 100 in ft", ENGLISH.text("sample.value", length));
        assertEquals("30.5\u00a0m: 30.5 in m", metric.text("sample.value", length));
    }

    @Test
    void times_are_local() {
        // 2026-06-02T14:50:10Z is 9:50:10 in Chicago (UTC−5 in summer).
        double epochS = 1_780_411_810;
        assertEquals(
                "June 2, 2026, 9:50\u00a0AM, June 2, 2026, 9:50\u00a0AM, 9:50:10\u00a0AM",
                ENGLISH.text("sample.time", Message.time(epochS)));
    }

    @Test
    void lists_join_with_the_word_of_the_language() {
        assertEquals("3, 4, 8: 3, 4 and 8; 3, 4 or 8; 3, 4, 8", ENGLISH.text("sample.list", List.of(3, 4, 8)));
        assertEquals("3: 3; 3; 3", ENGLISH.text("sample.list", List.of(3)));
        assertEquals("3, 4, 5: 3, 4 and 5; 3, 4 or 5; 3\u20135", ENGLISH.text("sample.list", List.of(3, 4, 5)));
    }

    @Test
    void messages_nest_and_user_text_is_not_read_as_a_pattern() {
        assertEquals(
                "Row {0}, don't: one row", ENGLISH.text("sample.nested", "Row {0}", Message.of("sample.choice", 1)));
    }

    @Test
    void percentages_show_their_sign_where_the_pattern_wants_it() {
        assertEquals("4.2%, +4.2%", ENGLISH.text("sample.percent", Message.percent(4.2)));
    }

    @Test
    void a_value_that_is_not_known_is_told() {
        assertEquals("1 place, not known", ENGLISH.text("sample.places", 1, Message.area(Double.NaN)));
    }

    @Test
    void another_language_is_another_file() {
        Messages spanish = new Messages(US.in(Locale.forLanguageTag("es")));
        assertEquals("una hilera", spanish.text("sample.choice", 1));
        assertFalse(spanish.has("sample.places"));
        assertEquals(
                "1 place, no se sabe", spanish.text("sample.places", 1, Message.area(Double.NaN)), "lacks the words");
    }

    @Test
    void a_missing_key_is_our_bug_and_named() {
        IllegalStateException e = assertThrows(IllegalStateException.class, () -> ENGLISH.text("sample.no.such.key"));
        assertTrue(e.getMessage().contains("sample.no.such.key"), e.getMessage());
        assertThrows(IllegalStateException.class, () -> ENGLISH.text("nobundle.key"));
    }

    @Test
    void a_missing_argument_is_our_bug_and_named() {
        IllegalStateException e = assertThrows(IllegalStateException.class, () -> ENGLISH.text("sample.places", 1));
        assertTrue(e.getMessage().contains("sample.places") && e.getMessage().contains("1"), e.getMessage());
    }

    @Test
    void a_style_that_the_value_does_not_have_is_our_bug() {
        assertThrows(IllegalStateException.class, () -> ENGLISH.text("sample.time", "noon"));
        assertThrows(IllegalStateException.class, () -> ENGLISH.text("sample.choice", "three"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '!',
            value = {
                "a {0",
                "a } b",
                "{x}",
                "{0,plural}",
                "{0,plural,one}",
                "{0,choice}",
                "{0,choice,x#a}",
                "{0,date,a|b}"
            })
    void a_malformed_pattern_is_our_bug(String pattern) {
        assertThrows(IllegalStateException.class, () -> MessagePattern.parse("sample.malformed", pattern));
    }
}
