package io.rowledger.log.source;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import java.util.regex.Pattern;

/** Names text that is no table with a delimiter: JSON, a receiver's sentences, a printed report, columns of spaces. */
public final class OtherForms {
    private static final Pattern JSON = Pattern.compile("\\s*(?:\\[\\s*)?[\\[{]\\s*(?:\"|\\{|\\[)(?s:.*)");
    /** Sentences of NMEA 0183: a talker of two letters, a type of three. */
    private static final Pattern SENTENCES = Pattern.compile("\\s*\\$[A-Z]{5},(?s:.*)");

    /** Fewest names of a header that is divided by spaces. */
    private static final int MIN_NAMES = 3;

    private OtherForms() {}

    /** Refuses a text that no delimiter makes a table of. */
    public static void refuse(String file, String start) {
        if (JSON.matcher(start).matches()) {
            throw refusal(file, "JSON, but no GeoJSON");
        }
        if (SENTENCES.matcher(start).matches()) {
            throw refusal(file, "the sentences of a receiver (NMEA 0183): positions without a flow or a rate");
        }
        if (start.startsWith("%PDF")) {
            throw refusal(file, "a PDF");
        }
        if (isSpaced(start)) {
            throw refusal(file, "columns divided by spaces");
        }
    }

    private static UnusableInputException refusal(String file, String found) {
        return UnusableInputException.found(found)
                .kind(RefusalKind.NOT_A_LOG)
                .inFile(file)
                .expected(
                        "a log in CSV, with names in the first line and a comma, semicolon, tab or vertical bar between the columns")
                .hint("export what the console logged as CSV");
    }

    /** Returns true if no line has a delimiter and the first two have the same number of words, three or more. */
    private static boolean isSpaced(String start) {
        var lines = CsvShape.firstLines(start);
        if (lines.size() < 2
                || lines.stream().limit(2).anyMatch(line -> line.chars().anyMatch(CsvShape::isCandidate))) {
            return false;
        }
        int words = lines.get(0).strip().split("\\s+", -1).length;
        return words >= MIN_NAMES && lines.get(1).strip().split("\\s+", -1).length == words;
    }
}
