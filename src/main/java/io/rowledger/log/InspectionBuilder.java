package io.rowledger.log;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.clean.LogCleaning;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.LogFileReader;
import io.rowledger.log.read.LogGlance;
import io.rowledger.log.source.NumberParser;
import io.rowledger.log.taskdata.BarGeometry;
import io.rowledger.log.taskdata.TaskData;
import io.rowledger.text.Message;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Collects what is known of each log: the table always, and every question at once. */
final class InspectionBuilder {
    private final LogOptions options;
    private final Function<Message, String> words;
    private final StringBuilder text = new StringBuilder();
    private final List<UnusableInputException> refusals = new ArrayList<>();
    private final List<UnusableInputException> questions = new ArrayList<>();
    private final List<FileLog> files = new ArrayList<>();
    /** Files of polygons, which no other log can be joined to. */
    private final List<FileLog> areas = new ArrayList<>();

    private @Nullable BarGeometry geometry;
    private @Nullable LogGlance first;

    InspectionBuilder(LogOptions options, Function<Message, String> words) {
        this.options = options;
        this.words = words;
    }

    void add(Path log) {
        try {
            if (TaskData.is(log)) {
                TaskDataLogs task = TaskDataLogs.read(log, options);
                geometry = task.geometry();
                task.logs().forEach(this::describe);
            } else {
                csv(log);
            }
        } catch (UnusableInputException e) {
            refusals.add(e);
            text.append(log).append("\n  can't be used\n\n");
        }
    }

    private void csv(Path log) {
        LogGlance glance = LogGlance.of(log, options);
        first = first == null ? glance : first;
        boolean polygons = AreaLog.is(log);
        List<UnusableInputException> open = oncePerKind(
                polygons ? AreaLog.questions(glance.preview(), glance.questions(), options) : glance.questions());
        if (open.isEmpty()) {
            try {
                if (polygons) {
                    AreaLog.read(List.of(log), options);
                    describeAreas(LogFileReader.read(log, options));
                } else {
                    describe(LogCleaning.clean(LogFileReader.read(log, options)));
                }
                return;
            } catch (UnusableInputException e) {
                open.add(e);
            }
        }
        questions.addAll(open);
        text.append(log).append('\n');
        Inspection.line(text, "form", glance.form());
        text.append("\n  columns\n");
        Inspection.table(glance.columnMeanings(), meaning -> "", words, text);
        text.append("\n  questions\n");
        for (int q = 0; q < open.size(); q++) {
            UnusableInputException question = open.get(q);
            text.append("    ")
                    .append(q + 1)
                    .append(". ")
                    .append(question.getMessage())
                    .append('\n');
            String readings = readings(glance.preview(), question);
            if (!readings.isEmpty()) {
                text.append("       ").append(readings).append('\n');
            }
        }
        text.append('\n');
    }

    /** Returns the questions without those that ask the same about another row. */
    static List<UnusableInputException> oncePerKind(List<UnusableInputException> all) {
        List<UnusableInputException> once = new ArrayList<>();
        Set<String> known = new HashSet<>();
        for (UnusableInputException question : all) {
            if (question.about().isEmpty() || known.add(question.kind() + " " + question.about())) {
                once.add(question);
            }
        }
        return once;
    }

    /** Returns what each unit makes of the values, for a question about the unit of a flow or rate. */
    private static String readings(LogPreview preview, UnusableInputException question) {
        boolean either = question.kind() == RefusalKind.FLOW_OR_RATE_UNIT;
        boolean flow = either || question.kind() == RefusalKind.FLOW_UNIT;
        boolean rate = either || question.kind() == RefusalKind.RATE_UNIT;
        if (!flow && !rate) {
            return "";
        }
        List<String> headers = preview.plan().headers();
        for (int i = 0; i < headers.size(); i++) {
            if (headers.get(i).strip().equals(question.column())) {
                boolean ofBar = !headers.get(i).matches(".*\\d.*");
                return UnitReadings.of(preview, i, flow, rate, ofBar);
            }
        }
        return "";
    }

    private void describe(FileLog file) {
        Inspection.describe(file, text, words);
        files.add(file);
    }

    private void describeAreas(FileLog file) {
        Inspection.describeAreas(file, text, words);
        areas.add(file);
    }

    Inspection build() {
        if (files.size() > 1) {
            together();
        }
        String all = text.toString().replace("\r\n", "\n");
        LogGlance glance = first;
        List<FileLog> read = files.isEmpty() ? areas : files;
        if (!read.isEmpty()) {
            FileLog file = read.get(0);
            String zone = ZoneProposal.of(file.log().latDeg[0], file.log().lonDeg[0]);
            return inspection(all, file.columnMeanings(), file.plan(), zone);
        }
        if (glance == null) {
            return new Inspection(all, refusals, questions, List.of(), List.of(""), 0, null, "");
        }
        String zone =
                ZoneProposal.of(degrees(glance.preview(), LogQuantity.LAT), degrees(glance.preview(), LogQuantity.LON));
        return inspection(all, glance.columnMeanings(), glance.preview().plan(), zone);
    }

    private Inspection inspection(String all, List<ColumnMeaning> columns, ColumnPlan plan, String zone) {
        List<String> products = plan.products().isEmpty() ? List.of("") : plan.products();
        return new Inspection(all, refusals, questions, columns, products, plan.outlets(), geometry, zone);
    }

    private static double degrees(LogPreview preview, LogQuantity quantity) {
        ColumnPlan.Column column = preview.plan().find(quantity);
        List<String> texts = column == null ? List.of() : preview.texts(column.index());
        return texts.isEmpty() ? Double.NaN : NumberParser.parse(texts.get(0), preview.mark());
    }

    private void together() {
        List<Message> notes = new ArrayList<>();
        try {
            LogTable table = LogJoiner.join(files, notes, List.of());
            notes.addAll(WorkPlaces.notes(files));
            text.append(String.format(Locale.ROOT, "Together: %,d records of one job.%n", table.records()));
            notes.forEach(note -> text.append("  ").append(words.apply(note)).append('\n'));
        } catch (UnusableInputException e) {
            refusals.add(e);
            text.append("Together they can't be used.\n");
        }
    }
}
