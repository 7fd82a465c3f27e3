package io.rowledger.log;

import java.util.ArrayList;
import java.util.List;

/** One log file, read and cleaned: its columns, where they came from and what was found on the way. */
final class FileLog {
    private final String name;
    private final String form;
    private final String shape;
    private final Sample sample;
    private final RecordReader reader;
    private final DropCount drops;
    private final List<String> notes = new ArrayList<>();
    private List<String> origins = List.of();
    private String sha256 = "";

    /**
     * A file as read.
     *
     * @param form how it is packed and written, for a person
     * @param shape what a line of it is, for a person
     */
    FileLog(String name, String form, String shape, Sample sample, RecordReader reader, DropCount drops) {
        this.name = name;
        this.form = form;
        this.shape = shape;
        this.sample = sample;
        this.reader = reader;
        this.drops = drops;
    }

    /** Says of each column where it came from, where a header alone does not tell. */
    void comesFrom(List<String> each) {
        origins = List.copyOf(each);
    }

    /** Keeps the digest of the file, once the whole of it is read. */
    void digest(String digest) {
        sha256 = digest;
    }

    Sample sample() {
        return sample;
    }

    String name() {
        return name;
    }

    String form() {
        return form;
    }

    /** What a line of it is. */
    String shape() {
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

    List<String> notes() {
        return notes;
    }

    LogSource source() {
        return new LogSource(name, sha256, reader.records(), log().records, drops.total());
    }

    /** The states of a quantity, or an empty array. */
    byte[] states(Measured measured) {
        for (int k = 0; k < reader.stateColumns().size(); k++) {
            if (reader.stateColumns().get(k).role().measured() == measured) {
                return log().states[k];
            }
        }
        return new byte[0];
    }

    /** The column of a quantity the machine has once, or an empty array. */
    double[] numbers(Measured measured) {
        for (int k = 0; k < reader.numberColumns().size(); k++) {
            if (reader.numberColumns().get(k).role().measured() == measured) {
                return log().numbers[k];
            }
        }
        return new double[0];
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
            String origin = i < origins.size() ? origins.get(i) : "";
            senses.add(new ColumnSense(
                    name, plan().headers().get(i), quantity, unit, text, remark.isEmpty() ? origin : remark));
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
