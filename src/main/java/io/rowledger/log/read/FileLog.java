package io.rowledger.log.read;

import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.Role;
import io.rowledger.log.source.LogSource;
import io.rowledger.log.time.TimestampReader;
import java.util.ArrayList;
import java.util.List;

/** One log file, read and cleaned: its columns, where they came from and what was found on the way. */
public final class FileLog {
    private final String name;
    private final String form;
    private final String shape;
    private final LogPreview sample;
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
    FileLog(String name, String form, String shape, LogPreview sample, RecordReader reader, DropCount drops) {
        this.name = name;
        this.form = form;
        this.shape = shape;
        this.sample = sample;
        this.reader = reader;
        this.drops = drops;
    }

    /** Says of each column where it came from, where a header alone does not tell. */
    public void comesFrom(List<String> each) {
        origins = List.copyOf(each);
    }

    /** Keeps the digest of the file, once the whole of it is read. */
    public void digest(String digest) {
        sha256 = digest;
    }

    public LogPreview sample() {
        return sample;
    }

    public String name() {
        return name;
    }

    public String form() {
        return form;
    }

    /** What a line of it is. */
    public String shape() {
        return shape;
    }

    public char mark() {
        return sample.mark();
    }

    public ColumnPlan plan() {
        return sample.plan();
    }

    public RecordReader reader() {
        return reader;
    }

    public RawLog log() {
        return reader.log();
    }

    public DropCount drops() {
        return drops;
    }

    public List<String> notes() {
        return notes;
    }

    public LogSource source() {
        return new LogSource(name, sha256, reader.records(), log().records, drops.total());
    }

    /** The states of a quantity, or an empty array. */
    public byte[] states(LogQuantity measured) {
        for (int k = 0; k < reader.stateColumns().size(); k++) {
            if (reader.stateColumns().get(k).role().measured() == measured) {
                return log().states[k];
            }
        }
        return new byte[0];
    }

    /** The column of a quantity the machine has once, or an empty array. */
    public double[] numbers(LogQuantity measured) {
        for (int k = 0; k < reader.numberColumns().size(); k++) {
            if (reader.numberColumns().get(k).role().measured() == measured) {
                return log().numbers[k];
            }
        }
        return new double[0];
    }

    /** How each column was understood, in the order of the file. */
    public List<ColumnSense> senses() {
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
                    boolean counted = role.measured() == LogQuantity.FLOW;
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
        LogQuantity measured = column.role().measured();
        TimestampReader clock = reader.clock();
        CoordinateParser places = reader.places();
        return !measured.isHelper()
                || (clock != null && clock.helpers().contains(measured))
                || (places != null && places.helpers().contains(measured));
    }

    private String remark(ColumnPlan.Column column) {
        TimestampReader clock = reader.clock();
        CoordinateParser places = reader.places();
        return switch (column.role().measured()) {
            case TIME, TIME_OF_WEEK -> clock != null ? clock.remark() : timeRemark();
            case LAT, LON -> places == null ? "" : places.remark();
            case FLOW -> TotalizerFlow.remark(column, sample.hints());
            case DATE, GPS_WEEK -> "read with the time";
            case LAT_SIDE, LON_SIDE -> "read with the position";
            default -> "";
        };
    }

    private String timeRemark() {
        return reader.timesWithoutZone() > 0 ? "no zone: taken as UTC" : "";
    }
}
