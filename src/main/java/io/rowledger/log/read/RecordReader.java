package io.rowledger.log.read;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.header.NonDataLines;
import io.rowledger.log.source.GroupedNumbers;
import io.rowledger.log.source.NumberParser;
import io.rowledger.log.time.EpochRange;
import io.rowledger.log.time.IsoTimestamps;
import io.rowledger.log.time.TimestampFormatDetector;
import io.rowledger.log.time.TimestampReader;
import io.rowledger.log.time.WholeDays;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Parses the fields of each record into SI values, or counts the record as left out. This is the hot loop of reading: it
 * allocates nothing per record (benchmark: {@code LogReadingBenchmark}).
 */
public final class RecordReader {
    /** Placeholders for missing values. */
    private static final Set<String> MISSING = Set.of("", "-", "--", "nan", "na", "n/a", "null", "none", "nil", "#n/a");

    private static final Set<String> YES = Set.of("1", "true", "on", "yes", "t", "y", "down", "lowered", "1.0");
    private static final Set<String> NO = Set.of("0", "false", "off", "no", "f", "n", "up", "raised", "lifted", "0.0");

    /** NMEA 0183 quality digits of fix types in words. */
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

    /** Speed at which points without times are placed in time, m/s (4.5 mph); no figure depends on it. */
    public static final double UNTIMED_MPS = 2;

    /** Mean radius of the Earth (IUGG R₁), m. */
    private static final double EARTH_M = 6_371_008.8;

    private final ColumnPlan plan;
    private final char mark;
    private final RawLog log;
    private final DropCount drops;
    private final NonDataLines remarks;
    /** Null for plain times. */
    private final @Nullable TimestampReader clock;
    /** Null for plain decimal degrees. */
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
    private final boolean untimed;
    /** Null for a log with times, or without days. */
    private final @Nullable WholeDays days;

    private final FieldFaults faults;
    private boolean gap = true;
    private boolean stayedDown;
    private boolean gapAtStart;
    private int records;

    RecordReader(LogPreview preview, DropCount drops) {
        this.plan = preview.plan();
        this.mark = preview.mark();
        this.remarks = new NonDataLines(preview.file(), plan);
        this.drops = drops;
        this.clock = TimestampFormatDetector.of(preview);
        this.places = CoordinateParser.of(preview);
        TotalizerFlow.requireHints(preview);
        this.timeColumn = plan.keyColumn();
        this.untimed = plan.isUntimed();
        ColumnPlan.Column day = plan.dayColumn();
        this.days = day == null ? null : WholeDays.of(preview, day);
        this.latColumn = need(LogQuantity.LAT);
        this.lonColumn = need(LogQuantity.LON);
        int fix = -1;
        int down = -1;
        for (ColumnPlan.Column column : plan.columns()) {
            if (column.role().quantity().isState()) {
                if (column.role().quantity() == LogQuantity.FIX) {
                    fix = stateColumns.size();
                } else if (column.role().quantity() == LogQuantity.DOWN) {
                    down = stateColumns.size();
                }
                stateColumns.add(column);
            } else if (!column.equals(timeColumn)
                    && !column.equals(latColumn)
                    && !column.equals(lonColumn)
                    && !column.role().quantity().isHelper()) {
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
            needed[k] = column.role().quantity() == LogQuantity.FLOW;
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

    /** Returns the number of records so far, including those left out. */
    public int records() {
        return records;
    }

    /** Returns the unreadable fields by column. */
    public FieldFaults faults() {
        return faults;
    }

    /** Returns the number of times without a zone. */
    public int zonelessTimes() {
        return clock == null ? timestamps.zonelessTimes() : clock.zonelessTimes();
    }

    /** Returns the first and the last day of a log that has days instead of times; empty for all others. */
    public List<LocalDate> days() {
        return days == null ? List.of() : days.days();
    }

    /** Returns the non-data lines. */
    public NonDataLines nonDataLines() {
        return remarks;
    }

    /** Returns the time reader; null for plain times. */
    @Nullable
    public TimestampReader timestampReader() {
        return clock;
    }

    /** Returns the position parser; null for plain decimal degrees. */
    @Nullable
    public CoordinateParser coordinates() {
        return places;
    }

    /** Returns true if records were left out before the first accepted one. */
    public boolean gapAtStart() {
        return gapAtStart;
    }

    /** Returns true if records were left out after the last accepted one. */
    public boolean gapAtEnd() {
        return gap;
    }

    public List<ColumnPlan.Column> numberColumns() {
        return numberColumns;
    }

    public List<ColumnPlan.Column> stateColumns() {
        return stateColumns;
    }

    /** Accepts or rejects one record; skips non-data lines. */
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
            // An unreadable line does not show the work state.
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
        double timeS = untimed ? 0 : time(fields, line);
        if (days != null && !days.take(fields)) {
            faults.bad(days.index(), fields[days.index()], line);
        }
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
            if (Double.isNaN(value) && !isMissing(text)) {
                value = GroupedNumbers.parse(text, mark);
            }
            if (Double.isNaN(value) && !isMissing(text)) {
                faults.bad(numberIndex[k], text, line);
                readable &= !needed[k];
            }
            log.numbers[k][i] = value * numberFactor[k];
        }
        log.timeS[i] = untimed ? drivenS(i) : timeS;
        return readable ? null : DropReason.UNREADABLE;
    }

    /** Time of a point without one, s: the distance driven at {@link #UNTIMED_MPS}. It only keeps the order. */
    private double drivenS(int i) {
        if (i == 0) {
            return 0;
        }
        double north = Math.toRadians(log.latDeg[i] - log.latDeg[i - 1]);
        double east = Math.toRadians(Math.IEEEremainder(log.lonDeg[i] - log.lonDeg[i - 1], 360))
                * Math.cos(Math.toRadians(log.latDeg[i]));
        return log.timeS[i - 1] + EARTH_M * Math.hypot(north, east) / UNTIMED_MPS;
    }

    private @Nullable DropReason position(String[] fields, int i, int line) {
        String latText = fields[latColumn.index()];
        String lonText = fields[lonColumn.index()];
        double lat = places == null ? NumberParser.parse(latText, mark) : places.latDeg(fields);
        double lon = places == null ? NumberParser.parse(lonText, mark) : places.lonDeg(fields);
        boolean noLat = Double.isNaN(lat) && isMissing(latText);
        boolean noLon = Double.isNaN(lon) && isMissing(lonText);
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
            faults.outOfRange(log.latDeg[i], log.lonDeg[i], line);
            return DropReason.UNREADABLE;
        }
        return null;
    }

    /** Returns true for too few fields, or for non-empty ones beyond the header. */
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
                timeS = number >= EpochRange.MIN_S ? number * EpochRange.unitS(number) : Double.NaN;
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
        if (!isMissing(text)) {
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
        if (!isMissing(text)) {
            faults.bad(column, text, line);
        }
        return -1;
    }

    private static boolean isMissing(String text) {
        return text.isEmpty() || MISSING.contains(text.strip().toLowerCase(Locale.ROOT));
    }

    private ColumnPlan.Column need(LogQuantity quantity) {
        ColumnPlan.Column column = plan.find(quantity);
        if (column == null) {
            throw UnusableInputException.found("no column for " + quantity.canonical());
        }
        return column;
    }
}
