package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.source.Line;
import java.util.ArrayList;
import java.util.List;

/**
 * What is known of a file once its header and first records are read: from it is decided how the others are.
 *
 * @param file the file as given
 * @param plan what its columns are
 * @param first its first records
 * @param mark the decimal mark
 * @param hints what the rig file says
 */
public record LogPreview(String file, ColumnPlan plan, List<Line> first, char mark, LogHints hints) {
    public LogPreview {
        first = List.copyOf(first);
    }

    /** What stands in a column, blanks cut and empty fields left out. */
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

    /** A message about a column of the first record. */
    public UnusableInputException found(ColumnPlan.Column column, String found) {
        return UnusableInputException.found(found)
                .inFile(file)
                .atLine(first.get(0).number())
                .atColumn(column.header());
    }
}
