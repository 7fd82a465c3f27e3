package io.rowledger.log;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;

/** One log file, read and cleaned: its columns, where they came from and what was found on the way. */
final class FileLog {
    private final String name;
    private final String form;
    private final CsvShape shape;
    private final char mark;
    private final ColumnPlan plan;
    private final RecordReader reader;
    private final DropCount drops;
    private final CSVRecord example;
    private final List<String> notes = new ArrayList<>();
    private String sha256 = "";

    FileLog(
            LogFile file,
            CsvShape shape,
            char mark,
            ColumnPlan plan,
            RecordReader reader,
            DropCount drops,
            CSVRecord example) {
        this.name = file.name();
        this.form = file.form();
        this.shape = shape;
        this.mark = mark;
        this.plan = plan;
        this.reader = reader;
        this.drops = drops;
        this.example = example;
    }

    /** Cleans the records once the whole file is read. */
    void finish(String digest) {
        sha256 = digest;
        FileChecks.beforeCleaning(this);
        Cleaner.clean(reader.log(), fix(), drops, notes);
        FileChecks.afterCleaning(this);
        SwappedAxes.check(this);
        FlowRange.check(this);
    }

    String name() {
        return name;
    }

    String form() {
        return form;
    }

    CsvShape shape() {
        return shape;
    }

    char mark() {
        return mark;
    }

    ColumnPlan plan() {
        return plan;
    }

    RecordReader reader() {
        return reader;
    }

    RawLog log() {
        return reader.log();
    }

    DropCount drops() {
        return drops;
    }

    List<String> notes() {
        return notes;
    }

    LogSource source() {
        return new LogSource(name, sha256, reader.records(), log().records, drops.total());
    }

    /** The fix digits, or an empty array. */
    byte[] fix() {
        for (int k = 0; k < reader.stateColumns().size(); k++) {
            if (reader.stateColumns().get(k).role().measured() == Measured.FIX) {
                return log().states[k];
            }
        }
        return new byte[0];
    }

    /** How each column was understood, in the order of the file. */
    List<ColumnSense> senses() {
        List<ColumnSense> senses = new ArrayList<>();
        for (int i = 0; i < plan.headers().size(); i++) {
            String text = i < example.size() ? example.get(i).strip() : "";
            String quantity = "";
            String unit = "";
            for (ColumnPlan.Column column : plan.columns()) {
                if (column.index() == i) {
                    quantity = column.role().canonical();
                    unit = column.unit();
                }
            }
            senses.add(new ColumnSense(name, plan.headers().get(i), quantity, unit, text));
        }
        return senses;
    }
}
