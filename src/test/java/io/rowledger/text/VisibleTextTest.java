package io.rowledger.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class VisibleTextTest {
    /** Unicode Standard Annex #9, tables of sections 2.1, 2.2, 2.4, 2.5 and 2.6. */
    private static final int[] BIDI = {
        0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068, 0x2069, 0x200E, 0x200F, 0x061C
    };

    @Test
    void every_bidirectional_formatting_character_of_annex_9_is_shown() {
        for (int c : BIDI) {
            assertEquals(String.format("a<U+%04X>b", c), VisibleText.line("a" + Character.toString(c) + "b"), "U+" + c);
        }
    }

    @Test
    void every_control_character_is_shown() {
        for (int c = 0; c < 0xa0; c++) {
            boolean control = Character.getType(c) == Character.CONTROL;
            String shown = VisibleText.line(Character.toString(c));
            assertEquals(control ? String.format("<U+%04X>", c) : Character.toString(c), shown);
        }
        assertEquals("<U+001B>[31mred", VisibleText.of("\u001b[31mred"));
    }

    @Test
    void line_breaks_and_tabs_stay_where_text_has_several_lines() {
        assertEquals("a\n\tb<U+000D>", VisibleText.of("a\n\tb\r"));
        assertEquals("a<U+000A><U+0009>b", VisibleText.line("a\n\tb"));
    }

    @Test
    void letters_of_every_script_and_joiners_stay_as_they_are() {
        for (String text : new String[] {
            "", "Nord 40", "Ñandú", "حقل", "שדה", "क्ष\u200dत्र", "田", "\ud83c\udf3d", "👩\u200d🌾\ufe0f", "½ °"
        }) {
            assertSame(text, VisibleText.line(text));
        }
    }

    @Test
    void what_has_no_width_is_shown() {
        assertEquals(
                "<U+200B><U+FEFF><U+E0041><U+00AD><U+2028><U+D800>x",
                VisibleText.line("\u200b\ufeff\udb40\udc41\u00ad\u2028\ud800x"));
    }

    /** Shown text holds nothing that would be shown again. */
    @Test
    void what_is_shown_stays_as_it_is() {
        StringBuilder all = new StringBuilder();
        for (int c = 0; c < 0x3000; c++) {
            all.appendCodePoint(c);
        }
        String once = VisibleText.line(all.toString());
        assertSame(once, VisibleText.line(once));
        assertTrue(once.contains("<U+202E>"));
    }
}
