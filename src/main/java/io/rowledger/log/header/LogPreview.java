package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.source.Line;
import java.util.ArrayList;
import java.util.List;

/**
 * The header and first records of a file, from which its formats are detected.
 *
 * @param file the file as given
 * @param plan the columns
 * @param first the first records
 * @param mark the decimal mark
 * @param options the rig file's information
 */
public record LogPreview(String file, ColumnPlan plan, List<Line> first, char mark, LogOptions options) {
    public LogPreview {
        first = List.copyOf(first);
    }

    /** Returns the facts that the logs do not show. */
    public LogHints hints() {
        return options.hints();
    }

    /** Returns the non-empty values of a column, stripped. */
    public List<String> texts(int column) {
        List<String> texts = new ArrayList<>();
        for (Line line : first) {
            String text = column < line.fields().length ? line.fields()[column].strip() : "";
            if (!text.isEmpty()) {
                texts.add(text);
            }
        }
        return texts;
    }

    /** Starts a refusal about a column of the first record. */
    public UnusableInputException found(ColumnPlan.Column column, String found) {
        return UnusableInputException.found(found)
                .inFile(file)
                .atLine(first.get(0).number())
                .atColumn(column.header());
    }
}
