package io.rowledger.log.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What block by block gives must be what the CSV library gives in one pass over the text: fields, line numbers and failures. */
class CsvLinesTest {
    private static final int START_CHARS = 32_767;
    /** More than three blocks. */
    private static final int LINES = 14_000;

    private static final CsvShape COMMA = new CsvShape(',');

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void every_line_end_gives_the_records_of_one_pass(String end) {
        requireSame(text(1, end, 0));
        requireSame(text(2, end, 0) + "9.5,last line without an end");
    }

    @Test
    void quoted_fields_comments_and_empty_lines_give_the_records_of_one_pass() {
        for (int seed = 3; seed < 8; seed++) {
            requireSame(text(seed, "\n", 1));
            requireSame(text(seed, "\r\n", 1));
        }
    }

    @Test
    void line_breaks_and_quotes_inside_of_fields_give_the_records_of_one_pass() {
        for (int seed = 8; seed < 14; seed++) {
            requireSame(text(seed, "\n", 2));
        }
    }

    @Test
    void a_quote_that_does_not_end_fails_at_its_line_after_all_records_before_it() {
        String text = text(20, "\n", 0);
        int middle = text.indexOf('\n', text.length() / 2) + 1;
        requireSame(text.substring(0, middle) + "1,\"2\" 3,4\n" + text.substring(middle));
        requireSame(text.substring(0, middle) + "1,\"2,4\n" + text.substring(middle));
    }

    @Test
    void a_text_that_can_no_longer_be_read_fails_at_the_line_that_it_has_come_to() {
        String text = text(21, "\n", 0);
        CsvLines lines = lines(text, new Reader() {
            private final Reader whole = new StringReader(text.substring(START_CHARS));
            private int left = 300_000;

            @Override
            public int read(char[] into, int from, int length) throws IOException {
                if (left == 0) {
                    throw new IOException("the end of the disk");
                }
                int count = whole.read(into, from, Math.min(left, length));
                left -= count;
                return count;
            }

            @Override
            public void close() {}
        });
        Pass pass = new Pass(new ArrayList<>(), new ArrayList<>());
        pass.run(() -> lines.next(), lines::number);
        long ends = text.substring(0, START_CHARS + 300_000)
                .chars()
                .filter(c -> c == '\n')
                .count();
        assertEquals(List.of("the end of the disk at " + ends), pass.failures);
    }

    private static void requireSame(String text) {
        Pass blocks = new Pass(new ArrayList<>(), new ArrayList<>());
        CsvLines lines = lines(text, new StringReader(text.substring(Math.min(START_CHARS, text.length()))));
        blocks.run(() -> lines.next(), lines::number);
        Pass one = new Pass(new ArrayList<>(), new ArrayList<>());
        try (CSVParser parser = CSVParser.parse(new StringReader(text), COMMA.format())) {
            Iterator<CSVRecord> records = parser.iterator();
            one.run(
                    () -> records.hasNext()
                            ? new Line(records.next().values(), (int) parser.getCurrentLineNumber())
                            : null,
                    () -> (int) parser.getCurrentLineNumber());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        assertEquals(one.failures, blocks.failures);
        assertEquals(one.records, blocks.records);
        assertTrue(one.records.size() > 5_000);
    }

    private static CsvLines lines(String text, Reader others) {
        return new CsvLines(text.substring(0, Math.min(START_CHARS, text.length())), others, COMMA, () -> {});
    }

    /** A log of 14,000 lines; with {@code kind} 1 quoted fields, comments and empty lines in it, with 2 quotes and line ends in fields. */
    private static String text(int seed, String end, int kind) {
        SplittableRandom random = new SplittableRandom(seed);
        StringBuilder text = new StringBuilder("time,lat,\"flow, gal/min\",note").append(end);
        for (int i = 0; i < LINES; i++) {
            text.append(i).append(',').append(random.nextInt(1_000_000)).append(",41.512345,-93.612345,0.1234,");
            int form = kind == 0 ? 0 : random.nextInt(kind == 1 ? 40 : 4_000);
            text.append(
                    switch (form) {
                        case 1 -> "\"a, b\",\"\"";
                        case 2 -> end + "# a comment, \"quoted\"";
                        case 3 -> end + end + end;
                        case 4 -> kind == 1 ? "" : "\"two" + end + "lines\"";
                        case 5 -> kind == 1 ? "" : "\"30\"\" bar\"";
                        case 6 -> kind == 1 ? "" : "30\" bar";
                        default -> "";
                    });
            text.append(end);
        }
        return text.toString();
    }

    private interface Source<T> {
        T next();
    }

    private record Pass(List<String> records, List<String> failures) {
        void run(Source<Line> lines, Source<Integer> number) {
            try {
                for (Line line = lines.next(); line != null; line = lines.next()) {
                    records.add(line.number() + " " + Arrays.toString(line.fields()));
                }
            } catch (UncheckedIOException e) {
                failures.add(
                        e.getCause().getMessage().replaceAll("\\(.*\\) | at line: .*", "") + " at " + number.next());
            }
        }
    }
}
