package io.rowledger.log.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The fast reader of numbers against {@link Double#parseDouble}, bit for bit. */
class NumberParserTest {
    @Test
    void a_million_random_numbers_are_read_as_the_jdk_reads_them() {
        Random random = new Random(20260514);
        for (int i = 0; i < 1_000_000; i++) {
            String text = number(random);
            assertEquals(
                    Double.doubleToRawLongBits(Double.parseDouble(text)),
                    Double.doubleToRawLongBits(NumberParser.parse(text, '.')),
                    text);
        }
    }

    private static String number(Random random) {
        StringBuilder text = new StringBuilder();
        int sign = random.nextInt(4);
        text.append(sign == 0 ? "-" : sign == 1 ? "+" : "");
        int whole = random.nextInt(random.nextInt(8) == 0 ? 22 : 5);
        int fraction = random.nextInt(random.nextInt(8) == 0 ? 30 : 9);
        digits(random, text, whole);
        if (fraction > 0 || whole == 0) {
            text.append('.');
            digits(random, text, Math.max(fraction, whole == 0 ? 1 : 0));
        } else if (random.nextBoolean()) {
            text.append('.');
        }
        if (random.nextInt(5) == 0) {
            text.append(random.nextBoolean() ? 'e' : 'E');
            text.append(random.nextBoolean() ? "-" : random.nextBoolean() ? "+" : "");
            text.append(random.nextInt(random.nextInt(4) == 0 ? 340 : 20));
        }
        return text.toString();
    }

    private static void digits(Random random, StringBuilder text, int count) {
        for (int i = 0; i < count; i++) {
            text.append((char) ('0' + (random.nextInt(3) == 0 ? 0 : random.nextInt(10))));
        }
    }

    @Test
    void the_decimal_mark_is_the_one_asked_for_and_no_other() {
        assertEquals(-88.1, NumberParser.parse("-88,1", ','));
        assertTrue(Double.isNaN(NumberParser.parse("-88.1", ',')));
        assertTrue(Double.isNaN(NumberParser.parse("1,234.5", '.')));
        assertTrue(Double.isNaN(NumberParser.parse("1.234,5", ',')));
        assertEquals(1e15 + 0.5, NumberParser.parse("1000000000000000,5", ','));
    }

    @Test
    void words_letters_and_halves_of_numbers_are_no_numbers() {
        for (String text : List.of(
                "",
                " ",
                "-",
                "+",
                ".",
                "e5",
                "1e",
                "1e+",
                "1d",
                "1f",
                "0x10",
                "NaN",
                "Infinity",
                "1 2",
                "1..2",
                "--1",
                "12a",
                "1e5.0",
                "\u0661")) {
            assertTrue(Double.isNaN(NumberParser.parse(text, '.')), text);
        }
    }

    @Test
    void blanks_around_a_number_do_not_matter() {
        assertEquals(4.5, NumberParser.parse("  4.5 ", '.'));
    }
}
