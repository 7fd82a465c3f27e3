package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * Turns the fields of one record after the other into figures in SI, or counts the record as left out. The hot loop of
 * reading: it makes no object of its own for a record (benchmark: {@code LogReadingBenchmark}).
 */
final class RecordReader {
    /** What spreadsheets and controllers write where they have no figure. */
    private static final Set<String> NO_FIGURE =
            Set.of("", "-", "--", "nan", "na", "n/a", "null", "none", "nil", "#n/a");

    private static final Set<String> YES = Set.of("1", "true", "on", "yes", "t", "y", "down", "lowered", "1.0");
    private static final Set<String> NO = Set.of("0", "false", "off", "no", "f", "n", "up", "raised", "lifted", "0.0");

    /** Seconds since 1970 above this are milliseconds: in seconds they would lie in the year 5138. */
    private static final double LARGEST_EPOCH_S = 1e11;

    private final ColumnPlan plan;
    private final char mark;
    private final RawLog log;
    private final DropCount drops;
    private final ColumnPlan.Column timeColumn;
    private final ColumnPlan.Column latColumn;
    private final ColumnPlan.Column lonColumn;
    private final List<ColumnPlan.Column> numberColumns = new ArrayList<>();
    private final List<ColumnPlan.Column> stateColumns = new ArrayList<>();
    private final int[] numberIndex;
    private final double[] numberFactor;
    private final boolean[] needed;
    private final int[] stateIndex;
    private final int fixState;
    private final int width;
    private final Timestamps timestamps = new Timestamps();
    private final double timeFactor;
    private final FieldFaults faults;
    private boolean gap = true;
    private boolean gapAtStart;
    private int records;

    RecordReader(ColumnPlan plan, char mark, DropCount drops) {
        this.plan = plan;
        this.mark = mark;
        this.drops = drops;
        this.timeColumn = need(Measured.TIME);
        this.latColumn = need(Measured.LAT);
        this.lonColumn = need(Measured.LON);
        int fix = -1;
        for (ColumnPlan.Column column : plan.columns()) {
            if (column.role().measured().isState()) {
                if (column.role().measured() == Measured.FIX) {
                    fix = stateColumns.size();
                }
                stateColumns.add(column);
            } else if (!column.equals(timeColumn) && !column.equals(latColumn) && !column.equals(lonColumn)) {
                numberColumns.add(column);
            }
        }
        fixState = fix;
        numberIndex = new int[numberColumns.size()];
        numberFactor = new double[numberColumns.size()];
        needed = new boolean[numberColumns.size()];
        for (int k = 0; k < numberIndex.length; k++) {
            ColumnPlan.Column column = numberColumns.get(k);
            numberIndex[k] = column.index();
            numberFactor[k] = column.toSi();
            needed[k] = column.role().measured() == Measured.FLOW;
        }
        stateIndex = stateColumns.stream().mapToInt(ColumnPlan.Column::index).toArray();
        timeFactor = timeColumn.toSi();
        log = new RawLog(numberIndex.length, stateIndex.length);
        width = plan.headers().size();
        faults = new FieldFaults(width);
    }

    RawLog log() {
        return log;
    }

    /** Data records so far, left out or not. */
    int records() {
        return records;
    }

    /** Fields that are no figure, by column. */
    FieldFaults faults() {
        return faults;
    }

    /** Times without a zone. */
    int timesWithoutZone() {
        return timestamps.withoutZone();
    }

    /** True where records were left out before the first one taken. */
    boolean gapAtStart() {
        return gapAtStart;
    }

    /** True where records were left out after the last one taken. */
    boolean gapAtEnd() {
        return gap;
    }

    List<ColumnPlan.Column> numberColumns() {
        return numberColumns;
    }

    List<ColumnPlan.Column> stateColumns() {
        return stateColumns;
    }

    /** Takes or leaves one record. */
    void read(CSVRecord fields, int line) {
        records++;
        DropReason reason = take(fields, line);
        if (reason == null) {
            gapAtStart |= log.records == 0 && records > 1;
            log.line[log.records] = line;
            log.gapBefore[log.records] = gap;
            log.accept();
            gap = false;
        } else {
            drops.add(reason, line);
            gap = true;
        }
    }

    private @Nullable DropReason take(CSVRecord fields, int line) {
        if (fields.size() != width && isRagged(fields)) {
            faults.ragged(fields.size(), line);
            return DropReason.UNREADABLE;
        }
        int i = log.records;
        double timeS = time(fields.get(timeColumn.index()), line);
        for (int k = 0; k < stateIndex.length; k++) {
            String text = fields.get(stateIndex[k]);
            log.states[k][i] = k == fixState ? fix(text, stateIndex[k], line) : state(text, stateIndex[k], line);
        }
        if (fixState >= 0 && log.states[fixState][i] == 0) {
            return DropReason.NO_FIX;
        }
        DropReason position = position(fields, i, line);
        if (position != null) {
            return position;
        }
        boolean readable = !Double.isNaN(timeS);
        for (int k = 0; k < numberIndex.length; k++) {
            String text = fields.get(numberIndex[k]);
            double value = Decimals.parse(text, mark);
            if (Double.isNaN(value) && !isNoFigure(text)) {
                faults.bad(numberIndex[k], text, line);
                readable &= !needed[k];
            }
            log.numbers[k][i] = value * numberFactor[k];
        }
        log.timeS[i] = timeS;
        return readable ? null : DropReason.UNREADABLE;
    }

    private @Nullable DropReason position(CSVRecord fields, int i, int line) {
        String latText = fields.get(latColumn.index());
        String lonText = fields.get(lonColumn.index());
        double lat = Decimals.parse(latText, mark);
        double lon = Decimals.parse(lonText, mark);
        boolean noLat = Double.isNaN(lat) && isNoFigure(latText);
        boolean noLon = Double.isNaN(lon) && isNoFigure(lonText);
        if ((noLat && noLon) || (lat == 0 && lon == 0)) {
            return DropReason.NO_FIX;
        }
        if (Double.isNaN(lat)) {
            faults.bad(latColumn.index(), latText, line);
        }
        if (Double.isNaN(lon)) {
            faults.bad(lonColumn.index(), lonText, line);
        }
        double latDeg = lat * latColumn.toSi() * (180 / Math.PI);
        double lonDeg = lon * lonColumn.toSi() * (180 / Math.PI);
        boolean inDegrees = latColumn.unit().equals("deg") && lonColumn.unit().equals("deg");
        log.latDeg[i] = inDegrees ? lat : latDeg;
        log.lonDeg[i] = inDegrees ? lon : lonDeg;
        if (Double.isNaN(lat) || Double.isNaN(lon)) {
            return DropReason.UNREADABLE;
        }
        if (Math.abs(log.latDeg[i]) > 90 || Math.abs(log.lonDeg[i]) > 180) {
            faults.offTheGlobe(log.latDeg[i], log.lonDeg[i], line);
            return DropReason.UNREADABLE;
        }
        return null;
    }

    /** Too few fields, or more than the header has and not just empty ones. */
    private boolean isRagged(CSVRecord fields) {
        for (int i = width; i < fields.size(); i++) {
            if (!fields.get(i).isBlank()) {
                return true;
            }
        }
        return fields.size() < width;
    }

    private double time(String text, int line) {
        double timeS;
        if (Double.isNaN(timeFactor)) {
            timeS = timestamps.read(text);
            if (Double.isNaN(timeS)) {
                double number = Decimals.parse(text, mark);
                timeS = number > LARGEST_EPOCH_S ? number * 1e-3 : number >= EpochRange.FIRST_S ? number : Double.NaN;
            }
        } else {
            timeS = Decimals.parse(text, mark) * timeFactor;
        }
        if (Double.isNaN(timeS)) {
            faults.bad(timeColumn.index(), text, line);
        }
        return timeS;
    }

    private byte state(String text, int column, int line) {
        if (text.length() == 1) {
            char c = text.charAt(0);
            if (c == '0' || c == '1') {
                return (byte) (c - '0');
            }
        }
        String word = text.strip().toLowerCase(Locale.ROOT);
        if (YES.contains(word)) {
            return 1;
        }
        if (NO.contains(word)) {
            return 0;
        }
        if (!isNoFigure(text)) {
            faults.bad(column, text, line);
        }
        return -1;
    }

    private byte fix(String text, int column, int line) {
        double value = Decimals.parse(text, mark);
        if (value >= 0 && value <= 9 && value == Math.rint(value)) {
            return (byte) value;
        }
        if (!isNoFigure(text)) {
            faults.bad(column, text, line);
        }
        return -1;
    }

    private static boolean isNoFigure(String text) {
        return text.isEmpty() || NO_FIGURE.contains(text.strip().toLowerCase(Locale.ROOT));
    }

    private ColumnPlan.Column need(Measured measured) {
        ColumnPlan.Column column = plan.find(measured);
        if (column == null) {
            throw UnusableInputException.found("no column for " + measured.canonical());
        }
        return column;
    }
}
