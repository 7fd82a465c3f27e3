package io.rowledger.workbench;

import io.rowledger.analysis.RowCheck;
import io.rowledger.batch.FieldFiles;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogSurvey;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The screen of the columns: what each header holds, what it was understood as, and the row check. */
final class ColumnView {
    /** Points of a small trace. */
    private static final int TRACE = 80;

    private final FieldStore store;
    private final Surveys surveys;

    ColumnView(FieldStore store, Surveys surveys) {
        this.store = store;
        this.surveys = surveys;
    }

    /**
     * The columns of a log of the field: the first one with open questions, or the first of all.
     *
     * @param file its name
     * @param columns in the order of the file
     * @param problems questions that are open
     * @param chosen the lines under {@code columns:} in the rig file
     * @param hints the lines under {@code log:} in the rig file
     * @param rows number of rows with a flow
     * @param spacingM row spacing that the readings were computed with, m
     * @param usualMps usual speed by the positions, m/s; null if unknown
     */
    record ColumnTable(
            String file,
            List<Column> columns,
            List<Question> problems,
            Map<String, Object> chosen,
            Map<String, Object> hints,
            int rows,
            double spacingM,
            @Nullable Double usualMps) {}

    /**
     * A column.
     *
     * @param header as written
     * @param quantity what it was understood as; empty if it is not used
     * @param unit of its values
     * @param remark how it was read
     * @param open true if a question about it is open, or its unit is not known
     * @param first values
     * @param trace values from the first to the last record; null where there is no number
     * @param withSpeed correlation with the speed, −1 to 1; null if unknown
     * @param usual its usual value while the machine moves; null if it holds no positive numbers
     * @param readings what its usual value comes to by unit
     */
    record Column(
            String header,
            String quantity,
            String unit,
            String remark,
            boolean open,
            List<String> first,
            List<@Nullable Double> trace,
            @Nullable Double withSpeed,
            @Nullable Double usual,
            List<LogSurvey.UnitReading> readings) {}

    /**
     * An open question.
     *
     * @param text what is asked and what to do
     * @param kind what it is about, a name of {@code RefusalKind}; null where no screen has choices for it
     * @param column header of the column that it is about, or empty
     */
    record Question(ProblemText text, @Nullable RefusalKind kind, String column) {
        static Question of(UnusableInputException question) {
            ProblemText text = ProblemText.of(question);
            return new Question(text, question.kind(), text.key());
        }
    }

    /** Choices of a person: quantity with its unit to header, and facts that the log does not show. */
    record Choices(Map<String, String> columns, Map<String, Object> hints) {}

    /** A row diagnosis without lengths. */
    record Check(int rows, boolean comparesRows, double workingS, List<CheckedFinding> findings, List<String> notes) {}

    /** A finding of the row check, in words. */
    record CheckedFinding(
            String title,
            int confidencePct,
            List<Integer> rows,
            double fromS,
            double toS,
            String evidence,
            String alternative,
            String check) {}

    ColumnTable columns(String name, Messages words) throws IOException {
        FieldFiles field = requireLogs(name);
        RigTree rig = store.rig(field);
        return table(logToSettle(field, rig), FieldStore.logOptions(field), rig, words);
    }

    /** The first log with open questions, or the first of all. */
    private Path logToSettle(FieldFiles field, RigTree rig) throws IOException {
        LogOptions options = FieldStore.logOptions(field);
        for (Path log : field.logs()) {
            if (!isSettled(log, options, rig)) {
                return log;
            }
        }
        return field.logs().get(0);
    }

    private boolean isSettled(Path log, LogOptions options, RigTree rig) throws IOException {
        try {
            return surveys.of(log, options, Surveys.spacingM(rig)).problems().isEmpty();
        } catch (UnusableInputException e) {
            // The screen of the logs says what is wrong with a file that has no columns at all.
            return true;
        }
    }

    private ColumnTable table(Path log, LogOptions options, RigTree rig, Messages words) throws IOException {
        double spacingM = Surveys.spacingM(rig);
        LogSurvey survey = surveys.of(log, options, spacingM);
        List<Column> columns = new ArrayList<>();
        for (LogSurvey.SurveyColumn column : survey.columns()) {
            ColumnMeaning meaning = column.meaning();
            columns.add(new Column(
                    meaning.header(),
                    meaning.quantity(),
                    meaning.unit(),
                    meaning.remark(words::text),
                    meaning.open(),
                    column.first(),
                    trace(column.trace()),
                    orNull(column.withSpeed()),
                    orNull(column.usual()),
                    column.readings()));
        }
        return new ColumnTable(
                String.valueOf(log.getFileName()),
                columns,
                survey.problems().stream().map(Question::of).toList(),
                rig.block("columns"),
                rig.block("log"),
                survey.rows(),
                spacingM,
                orNull(survey.usualMps()));
    }

    private static @Nullable Double orNull(double value) {
        return Double.isFinite(value) ? value : null;
    }

    private static List<@Nullable Double> trace(double[] values) {
        List<@Nullable Double> trace = new ArrayList<>();
        int points = Math.min(TRACE, values.length);
        for (int i = 0; i < points; i++) {
            double value = values[(int) ((long) i * values.length / points)];
            trace.add(Double.isFinite(value) ? value : null);
        }
        return trace;
    }

    /** Saves the choices in the field's rig file, if the log can be read with them so far as they go. */
    ColumnTable choose(String name, Choices choices, Messages words) throws IOException {
        FieldFiles field = requireLogs(name);
        Path log = logToSettle(field, store.rig(field));
        RigTree rig = store.rig(field)
                .with("columns", new LinkedHashMap<>(choices.columns()))
                .with("log", new LinkedHashMap<>(choices.hints()));
        // Unusable choices are refused before they replace the rig file.
        Path draft = store.folder().temporary();
        try {
            Files.write(draft, rig.yaml().getBytes(StandardCharsets.UTF_8));
            table(log, RigReader.logOptions(draft), rig, words);
        } catch (UnusableInputException e) {
            throw draft.toString().equals(e.file()) ? e.inFile(FieldStore.RIG) : e;
        } finally {
            Files.deleteIfExists(draft);
        }
        store.save(field, rig);
        return columns(name, words);
    }

    /** Compares the rows of the field's logs with each other. */
    Check check(String name, Messages words) throws IOException {
        FieldFiles field = requireLogs(name);
        double spacingM = Surveys.spacingM(store.rig(field));
        RowCheck check = RowCheck.of(
                field.logs(),
                FieldStore.logOptions(field),
                spacingM,
                Runtime.getRuntime().availableProcessors());
        Diagnosis diagnosis = check.diagnosis();
        List<CheckedFinding> findings = new ArrayList<>();
        for (Finding finding : diagnosis.findings()) {
            findings.add(new CheckedFinding(
                    words.text(FindingTitles.of(finding)),
                    (int) Math.round(100 * finding.confidence()),
                    finding.rows(),
                    finding.fromS(),
                    finding.toS(),
                    words.text(finding.evidence()),
                    words.text(finding.alternative()),
                    words.text(finding.check())));
        }
        List<String> notes = new ArrayList<>(words.texts(diagnosis.notes()));
        notes.addAll(words.texts(check.reading().notes()));
        return new Check(check.rows(), check.comparesRows(), check.workingS(), findings, notes);
    }

    private FieldFiles requireLogs(String name) throws IOException {
        FieldFiles field = store.field(name);
        if (field.logs().isEmpty()) {
            throw new HttpRefusal(HttpRefusal.UNUSABLE, "refusals.noLog", name);
        }
        return field;
    }
}
