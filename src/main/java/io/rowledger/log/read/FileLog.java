package io.rowledger.log.read;

import io.rowledger.finding.RegularFile;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.Role;
import io.rowledger.log.source.LogSource;
import io.rowledger.log.time.TimestampReader;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/** One log file after reading and cleaning: columns, counts and notes. */
public final class FileLog {
    private final String name;
    private final String form;
    private final String shape;
    private final LogPreview preview;
    private final RecordReader reader;
    private final DropCount drops;
    private final List<Message> notes = new ArrayList<>();
    private List<String> origins = List.of();
    private String sha256 = "";
    private double evenedS;

    /**
     * A file as read.
     *
     * @param form packing, character set and delimiter in words
     * @param shape what one line holds, in words
     */
    FileLog(String name, String form, String shape, LogPreview preview, RecordReader reader, DropCount drops) {
        this.name = name;
        this.form = form;
        this.shape = shape;
        this.preview = preview;
        this.reader = reader;
        this.drops = drops;
    }

    /** Sets the origin of each column, for formats whose header does not show it (task data). */
    public void setOrigins(List<String> each) {
        origins = List.copyOf(each);
    }

    /** Sets the SHA-256 of the file. */
    public void digest(String digest) {
        sha256 = digest;
    }

    /** Sets the time over which totals in coarse steps were evened out, s. */
    void evened(double overS) {
        evenedS = overS;
    }

    /** Returns the shortest time over which totals in coarse steps were evened out, s; 0 if none were. */
    public double evenedS() {
        return evenedS;
    }

    public LogPreview preview() {
        return preview;
    }

    public String name() {
        return name;
    }

    /** The name without folders: how notes name the file on a page. */
    public String shortName() {
        return RegularFile.name(name);
    }

    public String form() {
        return form;
    }

    /** Returns what one line holds, in words. */
    public String shape() {
        return shape;
    }

    public char mark() {
        return preview.mark();
    }

    public ColumnPlan plan() {
        return preview.plan();
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

    public List<Message> notes() {
        return notes;
    }

    public LogSource source() {
        return new LogSource(name, sha256, reader.records(), log().records, drops.total(), drops.repeated());
    }

    /** Returns the states of a quantity, or an empty array. */
    public byte[] states(LogQuantity quantity) {
        for (int k = 0; k < reader.stateColumns().size(); k++) {
            if (reader.stateColumns().get(k).role().quantity() == quantity) {
                return log().states[k];
            }
        }
        return new byte[0];
    }

    /** Returns the states of a quantity of one row or section, or an empty array. */
    public byte[] states(LogQuantity quantity, int row) {
        for (int k = 0; k < reader.stateColumns().size(); k++) {
            Role role = reader.stateColumns().get(k).role();
            if (role.quantity() == quantity && role.row() == row) {
                return log().states[k];
            }
        }
        return new byte[0];
    }

    /** Returns the first column of a quantity, or an empty array. */
    public double[] numbers(LogQuantity quantity) {
        for (int k = 0; k < reader.numberColumns().size(); k++) {
            if (reader.numberColumns().get(k).role().quantity() == quantity) {
                return log().numbers[k];
            }
        }
        return new double[0];
    }

    /** Returns the meaning of each column, in the order of the file. */
    public List<ColumnMeaning> columnMeanings() {
        List<ColumnMeaning> senses = new ArrayList<>();
        for (int i = 0; i < plan().headers().size(); i++) {
            List<String> texts = preview.texts(i);
            String text = texts.isEmpty() ? "" : texts.get(0);
            String quantity = "";
            String unit = "";
            List<Message> remarks = List.of();
            for (ColumnPlan.Column column : plan().columns()) {
                if (column.index() == i && isUsed(column)) {
                    Role role = column.role();
                    boolean counted = role.quantity() == LogQuantity.FLOW;
                    quantity = (counted ? new Role(column.written(), role.product(), role.row()) : role).canonical();
                    unit = column.unit();
                    remarks = remarks(column);
                }
            }
            ColumnPlan.Column day = plan().dayColumn();
            if (day != null && day.index() == i) {
                quantity = LogQuantity.DATE.canonical();
                remarks = List.of(Message.of("notes.column.days"));
            }
            String origin = i < origins.size() ? origins.get(i) : "";
            if (remarks.isEmpty() && !origin.isEmpty()) {
                remarks = List.of(Message.of("notes.column.origin", origin));
            }
            senses.add(new ColumnMeaning(name, plan().headers().get(i), quantity, unit, text, remarks, false));
        }
        return senses;
    }

    private boolean isUsed(ColumnPlan.Column column) {
        LogQuantity quantity = column.role().quantity();
        TimestampReader clock = reader.timestampReader();
        CoordinateParser places = reader.coordinates();
        return !quantity.isHelper()
                || (clock != null && clock.helpers().contains(quantity))
                || (places != null && places.helpers().contains(quantity));
    }

    private List<Message> remarks(ColumnPlan.Column column) {
        TimestampReader clock = reader.timestampReader();
        CoordinateParser places = reader.coordinates();
        return switch (column.role().quantity()) {
            case TIME, TIME_OF_WEEK -> clock != null ? clock.remarks() : timeRemarks();
            case LAT, LON -> places == null ? List.of() : places.remarks();
            case FLOW -> TotalizerFlow.remarks(column, preview.hints());
            case DATE, GPS_WEEK -> List.of(Message.of("notes.column.withTime"));
            case LAT_SIDE, LON_SIDE -> List.of(Message.of("notes.column.withPosition"));
            default -> List.of();
        };
    }

    private List<Message> timeRemarks() {
        return reader.zonelessTimes() > 0 ? List.of(Message.of("notes.column.utc")) : List.of();
    }
}
