package io.rowledger.log.read;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.NonDataLines;
import io.rowledger.log.source.NumberParser;
import io.rowledger.log.time.EpochRange;
import io.rowledger.log.time.IsoTimestamps;
import io.rowledger.log.time.TimestampFormatDetector;
import io.rowledger.log.time.TimestampReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Turns the fields of one record after the other into figures in SI, or counts the record as left out. The hot loop of
 * reading: it makes no object of its own for a record (benchmark: {@code LogReadingBenchmark}).
 */
public final class RecordReader {
    /** What spreadsheets and controllers write where they have no figure. */
    private static final Set<String> NO_FIGURE =
            Set.of("", "-", "--", "nan", "na", "n/a", "null", "none", "nil", "#n/a");

    private static final Set<String> YES = Set.of("1", "true", "on", "yes", "t", "y", "down", "lowered", "1.0");
    private static final Set<String> NO = Set.of("0", "false", "off", "no", "f", "n", "up", "raised", "lifted", "0.0");

    /** The NMEA 0183 quality digit of what some receivers write in words. */
    private static final Map<String, Byte> FIX_WORDS = Map.ofEntries(
            Map.entry("no fix", (byte) 0),
            Map.entry("invalid", (byte) 0),
            Map.entry("autonomous", (byte) 1),
            Map.entry("single", (byte) 1),
            Map.entry("dgps", (byte) 2),
            Map.entry("dgnss", (byte) 2),
            Map.entry("differential", (byte) 2),
            Map.entry("sbas", (byte) 2),
            Map.entry("waas", (byte) 2),
            Map.entry("rtk fixed", (byte) 4),
            Map.entry("rtk fix", (byte) 4),
            Map.entry("rtk float", (byte) 5),
            Map.entry("float", (byte) 5),
            Map.entry("float rtk", (byte) 5));

    private final ColumnPlan plan;
    private final char mark;
    private final RawLog log;
    private final DropCount drops;
    private final NonDataLines remarks;
    /** Reads times that are not plain; null where they are. */
    private final @Nullable TimestampReader clock;
    /** Reads positions that are not plain; null where they are. */
    private final @Nullable CoordinateParser places;

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
    private final int downState;
    private final int width;
    private final IsoTimestamps timestamps = new IsoTimestamps();
    private final double timeFactor;
    private final FieldFaults faults;
    private boolean gap = true;
    private boolean stayedDown;
    private boolean gapAtStart;
    private int records;

    RecordReader(LogPreview sample, DropCount drops) {
        this.plan = sample.plan();
        this.mark = sample.mark();
        this.remarks = new NonDataLines(sample.file(), plan);
        this.drops = drops;
        this.clock = TimestampFormatDetector.of(sample);
        this.places = CoordinateParser.of(sample);
        TotalizerFlow.settle(sample);
        this.timeColumn = plan.timeColumn();
        this.latColumn = need(LogQuantity.LAT);
        this.lonColumn = need(LogQuantity.LON);
        int fix = -1;
        int down = -1;
        for (ColumnPlan.Column column : plan.columns()) {
            if (column.role().measured().isState()) {
                if (column.role().measured() == LogQuantity.FIX) {
                    fix = stateColumns.size();
                } else if (column.role().measured() == LogQuantity.DOWN) {
                    down = stateColumns.size();
                }
                stateColumns.add(column);
            } else if (!column.equals(timeColumn)
                    && !column.equals(latColumn)
                    && !column.equals(lonColumn)
                    && !column.role().measured().isHelper()) {
                numberColumns.add(column);
            }
        }
        fixState = fix;
        downState = down;
        numberIndex = new int[numberColumns.size()];
        numberFactor = new double[numberColumns.size()];
        needed = new boolean[numberColumns.size()];
        for (int k = 0; k < numberIndex.length; k++) {
            ColumnPlan.Column column = numberColumns.get(k);
            numberIndex[k] = column.index();
            numberFactor[k] = column.toSi();
            needed[k] = column.role().measured() == LogQuantity.FLOW;
        }
        stateIndex = stateColumns.stream().mapToInt(ColumnPlan.Column::index).toArray();
        timeFactor = timeColumn.toSi();
        log = new RawLog(numberIndex.length, stateIndex.length);
        width = plan.headers().size();
        faults = new FieldFaults(width);
    }

    public RawLog log() {
        return log;
    }

    /** Data records so far, left out or not. */
    public int records() {
        return records;
    }

    /** Fields that are no figure, by column. */
    public FieldFaults faults() {
        return faults;
    }

    /** Times without a zone. */
    public int timesWithoutZone() {
        return clock == null ? timestamps.withoutZone() : clock.withoutZone();
    }

    /** Lines that are no records. */
    public NonDataLines remarks() {
        return remarks;
    }

    /** How times are read; null where they are plain. */
    @Nullable
    public TimestampReader clock() {
        return clock;
    }

    /** How positions are read; null where they are plain. */
    @Nullable
    public CoordinateParser places() {
        return places;
    }

    /** True where records were left out before the first one taken. */
    public boolean gapAtStart() {
        return gapAtStart;
    }

    /** True where records were left out after the last one taken. */
    public boolean gapAtEnd() {
        return gap;
    }

    public List<ColumnPlan.Column> numberColumns() {
        return numberColumns;
    }

    public List<ColumnPlan.Column> stateColumns() {
        return stateColumns;
    }

    /** Takes or leaves one record, or passes over a line that is none. */
    void read(String[] fields, int line) {
        if (remarks.mayBe(fields) && remarks.take(fields, line, log.records)) {
            return;
        }
        records++;
        DropReason reason = take(fields, line);
        if (reason == null) {
            gapAtStart |= log.records == 0 && records > 1;
            log.line[log.records] = line;
            log.gapBefore[log.records] = gap;
            log.downBefore[log.records] = gap && stayedDown;
            log.accept();
            gap = false;
            stayedDown = downState >= 0;
        } else {
            drops.add(reason, line);
            // A line that can't be read says nothing of the bar either.
            stayedDown &= downState >= 0 && reason == DropReason.NO_FIX && log.states[downState][log.records] == 1;
            gap = true;
        }
    }

    private @Nullable DropReason take(String[] fields, int line) {
        if (fields.length != width && isRagged(fields)) {
            faults.ragged(fields.length, line);
            return DropReason.UNREADABLE;
        }
        int i = log.records;
        double timeS = time(fields, line);
        for (int k = 0; k < stateIndex.length; k++) {
            String text = fields[stateIndex[k]];
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
            String text = fields[numberIndex[k]];
            double value = NumberParser.parse(text, mark);
            if (Double.isNaN(value) && !isNoFigure(text)) {
                faults.bad(numberIndex[k], text, line);
                readable &= !needed[k];
            }
            log.numbers[k][i] = value * numberFactor[k];
        }
        log.timeS[i] = timeS;
        return readable ? null : DropReason.UNREADABLE;
    }

    private @Nullable DropReason position(String[] fields, int i, int line) {
        String latText = fields[latColumn.index()];
        String lonText = fields[lonColumn.index()];
        double lat = places == null ? NumberParser.parse(latText, mark) : places.latDeg(fields);
        double lon = places == null ? NumberParser.parse(lonText, mark) : places.lonDeg(fields);
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
        boolean inDegrees = places != null
                || (latColumn.unit().equals("deg") && lonColumn.unit().equals("deg"));
        log.latDeg[i] = inDegrees ? lat : lat * latColumn.toSi() * (180 / Math.PI);
        log.lonDeg[i] = inDegrees ? lon : lon * lonColumn.toSi() * (180 / Math.PI);
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
    private boolean isRagged(String[] fields) {
        for (int i = width; i < fields.length; i++) {
            if (!fields[i].isBlank()) {
                return true;
            }
        }
        return fields.length < width;
    }

    private double time(String[] fields, int line) {
        String text = fields[timeColumn.index()];
        double timeS;
        if (clock != null) {
            timeS = clock.read(fields, line);
        } else if (Double.isNaN(timeFactor)) {
            timeS = timestamps.read(text);
            if (Double.isNaN(timeS)) {
                double number = NumberParser.parse(text, mark);
                timeS = number >= EpochRange.FIRST_S ? number * EpochRange.unitS(number) : Double.NaN;
            }
        } else {
            timeS = NumberParser.parse(text, mark) * timeFactor;
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
        double value = NumberParser.parse(text, mark);
        if (value >= 0 && value <= 9 && value == Math.rint(value)) {
            return (byte) value;
        }
        Byte word = FIX_WORDS.get(text.strip().toLowerCase(Locale.ROOT).replace('_', ' '));
        if (word != null) {
            return word;
        }
        if (!isNoFigure(text)) {
            faults.bad(column, text, line);
        }
        return -1;
    }

    private static boolean isNoFigure(String text) {
        return text.isEmpty() || NO_FIGURE.contains(text.strip().toLowerCase(Locale.ROOT));
    }

    private ColumnPlan.Column need(LogQuantity measured) {
        ColumnPlan.Column column = plan.find(measured);
        if (column == null) {
            throw UnusableInputException.found("no column for " + measured.canonical());
        }
        return column;
    }
}
