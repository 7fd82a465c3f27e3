package io.rowledger.log.read;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.Questions;
import io.rowledger.log.header.Role;
import io.rowledger.log.time.TimestampFormatDetector;
import io.rowledger.text.Message;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The header and first records of a log with every question that they raise: for an inspection, which does not stop at the
 * first one.
 *
 * @param form packing, character set and delimiter in words
 * @param preview the header and first records
 * @param questions the refusals, in the order in which they were found
 */
public record LogGlance(String form, LogPreview preview, List<UnusableInputException> questions) {
    /** Copies the questions. */
    public LogGlance {
        questions = List.copyOf(questions);
    }

    /**
     * Looks at the beginning of a log.
     *
     * @throws UnusableInputException if it has no header or no record
     */
    public static LogGlance of(Path path, LogOptions options) {
        Questions questions = Questions.collected();
        return of(LogFileReader.beginning(path, options, questions), questions);
    }

    /** Adds the questions that the first records raise. */
    static LogGlance of(LogFileReader.Beginning beginning, Questions questions) {
        LogPreview preview = beginning.preview();
        ColumnPlan plan = preview.plan();
        if (plan.find(LogQuantity.LAT) != null && plan.find(LogQuantity.LON) != null) {
            questions.attempt(() -> CoordinateParser.of(preview));
        }
        questions.attempt(() -> TimestampFormatDetector.of(preview));
        questions.attempt(() -> TotalizerFlow.requireHints(preview));
        return new LogGlance(beginning.form(), preview, questions.all());
    }

    /** Returns the meaning of each column, in the order of the file. */
    public List<ColumnMeaning> columnMeanings() {
        List<ColumnMeaning> meanings = new ArrayList<>();
        ColumnPlan plan = preview.plan();
        for (int i = 0; i < plan.headers().size(); i++) {
            String header = plan.headers().get(i);
            List<String> texts = preview.texts(i);
            String quantity = "";
            String unit = "";
            for (ColumnPlan.Column column : plan.columns()) {
                if (column.index() == i) {
                    Role role = column.role();
                    boolean flow = role.quantity() == LogQuantity.FLOW;
                    quantity = (flow ? new Role(column.written(), role.product(), role.row()) : role).canonical();
                    unit = column.unit();
                }
            }
            List<Message> remarks = remarks(header);
            String first = texts.isEmpty() ? "" : texts.get(0);
            meanings.add(new ColumnMeaning(preview.file(), header, quantity, unit, first, remarks, !remarks.isEmpty()));
        }
        return meanings;
    }

    private List<Message> remarks(String header) {
        for (int q = 0; q < questions.size(); q++) {
            if (Objects.equals(questions.get(q).column(), header.strip())) {
                return List.of(Message.of("notes.column.question"));
            }
        }
        return preview.plan().withoutUnit().contains(header.strip())
                ? List.of(Message.of("notes.column.noUnit"))
                : List.of();
    }
}
