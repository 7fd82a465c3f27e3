package io.rowledger.log;

import java.util.ArrayList;
import java.util.List;

/** One log file, read and cleaned: its columns, where they came from and what was found on the way. */
final class FileLog {
    private final String name;
    private final String form;
    private final CsvShape shape;
    private final Sample sample;
    private final RecordReader reader;
    private final DropCount drops;
    private final boolean longShape;
    private final List<String> notes = new ArrayList<>();
    private String sha256 = "";

    FileLog(LogFile file, CsvShape shape, Sample sample, RecordReader reader, DropCount drops, boolean longShape) {
        this.name = file.name();
        this.form = file.form();
        this.shape = shape;
        this.sample = sample;
        this.reader = reader;
        this.drops = drops;
        this.longShape = longShape;
    }

    /** Cleans the records once the whole file is read. */
    void finish(String digest) {
        sha256 = digest;
        FileChecks.beforeCleaning(this);
        CountedFlow.addUp(reader, sample.hints());
        Parts.inOrder(reader.log(), reader.remarks().partStarts());
        Cleaner.clean(reader.log(), fix(), drops, notes);
        FileChecks.afterCleaning(this);
        CountedFlow.differences(reader, notes);
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
        return sample.mark();
    }

    ColumnPlan plan() {
        return sample.plan();
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

    /** True where the file has a line for each row and time. */
    boolean longShape() {
        return longShape;
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
        for (int i = 0; i < plan().headers().size(); i++) {
            List<String> texts = sample.texts(i);
            String text = texts.isEmpty() ? "" : texts.get(0);
            String quantity = "";
            String unit = "";
            String remark = "";
            for (ColumnPlan.Column column : plan().columns()) {
                if (column.index() == i && isUsed(column)) {
                    Role role = column.role();
                    boolean counted = role.measured() == Measured.FLOW;
                    quantity = (counted ? new Role(column.written(), role.product(), role.row()) : role).canonical();
                    unit = column.unit();
                    remark = remark(column);
                }
            }
            senses.add(new ColumnSense(name, plan().headers().get(i), quantity, unit, text, remark));
        }
        return senses;
    }

    private boolean isUsed(ColumnPlan.Column column) {
        Measured measured = column.role().measured();
        Clock clock = reader.clock();
        Places places = reader.places();
        return !measured.isHelper()
                || (clock != null && clock.helpers().contains(measured))
                || (places != null && places.helpers().contains(measured));
    }

    private String remark(ColumnPlan.Column column) {
        Clock clock = reader.clock();
        Places places = reader.places();
        return switch (column.role().measured()) {
            case TIME, TIME_OF_WEEK -> clock != null ? clock.remark() : timeRemark();
            case LAT, LON -> places == null ? "" : places.remark();
            case FLOW -> CountedFlow.remark(column, sample.hints());
            case DATE, GPS_WEEK -> "read with the time";
            case LAT_SIDE, LON_SIDE -> "read with the position";
            default -> "";
        };
    }

    private String timeRemark() {
        return reader.timesWithoutZone() > 0 ? "no zone: taken as UTC" : "";
    }
}
