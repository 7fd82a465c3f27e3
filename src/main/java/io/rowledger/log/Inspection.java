package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.source.LogSource;
import io.rowledger.log.source.NumberParser;
import io.rowledger.log.taskdata.BarGeometry;
import io.rowledger.text.Message;
import io.rowledger.units.Dimension;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * How the program reads logs before there is a rig file: the meaning of each column, unit and time, the records left
 * out, and what is wrong.
 *
 * @param text plain text for a person, one block for each file
 * @param refusals why files can't be read at all, or not together, in the order of the files; the text does not repeat them
 * @param questions what is open about the other files, in their order; the text has them below the columns
 * @param columns the meaning of each column of the first file that can be read
 * @param products the product keys in its flow columns; one empty key if the columns name none
 * @param rows the number of outlets with a flow column; 0 if no file can be used
 * @param geometry the machine's geometry from task data; null if there is none
 * @param zone a time zone proposed from the position; empty if none is
 */
public record Inspection(
        String text,
        List<UnusableInputException> refusals,
        List<UnusableInputException> questions,
        List<ColumnMeaning> columns,
        List<String> products,
        int rows,
        @Nullable BarGeometry geometry,
        String zone) {
    /** Shortest silence that is listed, s; a report bridges shorter ones. */
    private static final double MIN_SILENT_S = 1.5;

    private static final double MIN_SILENT_INTERVALS = 2.5;

    /** Copies the lists. */
    public Inspection {
        refusals = List.copyOf(refusals);
        questions = List.copyOf(questions);
        columns = List.copyOf(columns);
        products = List.copyOf(products);
    }

    /**
     * Inspects each file on its own, then whether they can be joined.
     *
     * @param words turns a note into text
     */
    public static Inspection of(List<Path> logs, LogOptions options, Function<Message, String> words) {
        InspectionBuilder builder = new InspectionBuilder(options, words);
        logs.forEach(builder::add);
        return builder.build();
    }

    static void describe(FileLog file, StringBuilder text, Function<Message, String> words) {
        LogSource source = file.source();
        RawLog log = file.log();
        text.append(file.name()).append('\n');
        line(text, "form", file.form());
        line(text, "SHA-256", source.sha256());
        line(
                text,
                "records",
                String.format(Locale.ROOT, "%,d, of which %,d can be used", source.records(), source.used()));
        double firstS = log.timeS[0];
        double lastS = log.timeS[log.records - 1];
        double intervalS = log.intervalS();
        if (!file.reader().days().isEmpty()) {
            line(text, "day", days(file.reader().days()));
        }
        if (file.plan().isUntimed()) {
            line(text, "time", "not in this file: points in driving order");
        } else {
            line(text, "time", instant(firstS) + " to " + instant(lastS) + " UTC, " + span(lastS - firstS));
            line(text, "rate", "a record every " + figures(intervalS) + " s (" + figures(1 / intervalS) + " Hz)");
            line(text, "silent", silent(log, intervalS));
        }
        line(text, "place", place(log));
        line(text, "outlets", outlets(file.plan()));
        line(text, "shape", file.shape());
        text.append("\n  columns\n");
        columns(file, words, text);
        dropped(file, text);
        warnings(file, text, words);
        text.append('\n');
    }

    /** Describes a file of polygons with a rate each. */
    static void describeAreas(FileLog file, StringBuilder text, Function<Message, String> words) {
        RawLog log = file.log();
        text.append(file.name()).append('\n');
        line(text, "form", file.form());
        line(
                text,
                "areas",
                String.format(
                        Locale.ROOT,
                        "%,d polygons with a rate each; path, flows and single rows are not in this file",
                        log.records));
        if (!file.reader().days().isEmpty()) {
            line(text, "day", days(file.reader().days()));
        }
        if (!file.plan().isUntimed()) {
            double[] times =
                    Arrays.stream(log.timeS).limit(log.records).sorted().toArray();
            line(text, "time", instant(times[0]) + " to " + instant(times[times.length - 1]) + " UTC");
        }
        line(text, "place", place(log));
        text.append("\n  columns\n");
        table(file.columnMeanings(), meaning -> "", words, text);
        List<Message> notes = AreaLog.notes(file);
        if (!notes.isEmpty()) {
            text.append("\n  to note\n");
            notes.forEach(note -> text.append("    ").append(words.apply(note)).append('\n'));
        }
        text.append('\n');
    }

    private static String days(List<LocalDate> days) {
        return days.get(0).equals(days.get(1)) ? days.get(0).toString() : days.get(0) + " to " + days.get(1);
    }

    private static void columns(FileLog file, Function<Message, String> words, StringBuilder text) {
        table(file.columnMeanings(), meaning -> meaning.ignored() ? "" : converted(file, meaning), words, text);
    }

    /** Prints a table of columns; {@code converted} gives the first value in SI. */
    static void table(
            List<ColumnMeaning> meanings,
            Function<ColumnMeaning, String> converted,
            Function<Message, String> words,
            StringBuilder text) {
        List<String[]> rows = new ArrayList<>();
        rows.add(new String[] {"header", "is", "unit", "first value", "in SI", "remark"});
        for (ColumnMeaning meaning : meanings) {
            rows.add(new String[] {
                meaning.header(),
                meaning.ignored() ? "(not used)" : meaning.quantity(),
                meaning.unit(),
                meaning.example(),
                converted.apply(meaning),
                meaning.remark(words)
            });
        }
        int[] width = new int[6];
        for (String[] row : rows) {
            for (int c = 0; c < row.length; c++) {
                width[c] = Math.max(width[c], row[c].length());
            }
        }
        for (String[] row : rows) {
            StringBuilder line = new StringBuilder("   ");
            for (int c = 0; c < row.length; c++) {
                line.append(' ').append(row[c]).append(" ".repeat(width[c] - row[c].length() + 1));
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
    }

    private static String converted(FileLog file, ColumnMeaning meaning) {
        for (ColumnPlan.Column column : file.plan().columns()) {
            Dimension dimension = column.role().quantity().dimension();
            if (!column.header().equals(meaning.header().strip()) || dimension == null) {
                continue;
            }
            if (!file.plan().isUntimed() && column.equals(file.plan().timeColumn())) {
                return instant(file.log().timeS[0]) + " UTC";
            }
            if (column.written() != column.role().quantity()) {
                double flowLPerS = flow(file, column);
                return file.plan().isUntimed() || Double.isNaN(flowLPerS)
                        ? ""
                        : String.format(Locale.ROOT, "%.5f L/s", flowLPerS);
            }
            double value = NumberParser.parse(meaning.example(), file.mark()) * column.toSi();
            return switch (dimension) {
                case FLOW -> String.format(Locale.ROOT, "%.5f L/s", value);
                case RATE -> String.format(Locale.ROOT, "%.6f L/m2", value);
                case SPEED -> String.format(Locale.ROOT, "%.3f m/s", value);
                case PRESSURE -> String.format(Locale.ROOT, "%.0f Pa", value);
                case TURN_RATE -> String.format(Locale.ROOT, "%.5f rad/s", value);
                case ANGLE ->
                    isPosition(column) ? position(file, column) : String.format(Locale.ROOT, "%.5f rad", value);
                default -> "";
            };
        }
        return "";
    }

    /** Returns the first flow of a column that holds volumes or pulses, L/s. */
    private static double flow(FileLog file, ColumnPlan.Column column) {
        int k = file.reader().numberColumns().indexOf(column);
        return k < 0 ? Double.NaN : file.log().numbers[k][0];
    }

    private static String position(FileLog file, ColumnPlan.Column column) {
        boolean lat = column.role().quantity() == LogQuantity.LAT;
        return file.reader().coordinates() == null
                ? ""
                : String.format(Locale.ROOT, "%.7f deg", (lat ? file.log().latDeg : file.log().lonDeg)[0]);
    }

    private static boolean isPosition(ColumnPlan.Column column) {
        LogQuantity quantity = column.role().quantity();
        return quantity == LogQuantity.LAT || quantity == LogQuantity.LON;
    }

    private static void dropped(FileLog file, StringBuilder text) {
        text.append("\n  left out\n");
        boolean any = false;
        for (DropReason reason : DropReason.values()) {
            int count = file.drops().count(reason);
            if (count > 0) {
                any = true;
                text.append(String.format(
                        Locale.ROOT,
                        "    %,d %s: %s; the first at line %d%n",
                        count,
                        reason.name().toLowerCase(Locale.ROOT),
                        reason.words(),
                        file.drops().firstLine(reason)));
            }
        }
        if (!any) {
            text.append("    nothing\n");
        }
    }

    private static void warnings(FileLog file, StringBuilder text, Function<Message, String> words) {
        List<Message> notes = new ArrayList<>(LogReader.notes(file));
        notes.addAll(WorkPlaces.notes(List.of(file)));
        if (file.plan().find(LogQuantity.DOWN) == null) {
            notes.add(Message.of("notes.log.without.down"));
        }
        if (file.plan().find(LogQuantity.FIX) == null) {
            notes.add(Message.of("notes.log.without.fix"));
        }
        if (file.plan().find(LogQuantity.TARGET) == null) {
            notes.add(Message.of("notes.log.without.target"));
        }
        if (!notes.isEmpty()) {
            text.append("\n  to note\n");
            notes.forEach(note -> text.append("    ").append(words.apply(note)).append('\n'));
        }
    }

    private static String outlets(ColumnPlan plan) {
        List<String> parts = new ArrayList<>();
        for (String product : plan.products()) {
            List<Integer> rows = new ArrayList<>();
            for (ColumnPlan.Column column : plan.columns()) {
                if (column.role().quantity() == LogQuantity.FLOW
                        && column.role().product().equals(product)) {
                    rows.add(column.role().row());
                }
            }
            if (rows.equals(List.of(0))) {
                parts.add("one meter or rate for the whole bar");
                continue;
            }
            boolean whole = rows.size() == plan.outlets();
            parts.add(rows.size()
                    + (product.isEmpty() ? "" : " of " + product)
                    + (whole ? "" : " (numbers up to " + plan.outlets() + ", so some are missing)"));
        }
        return String.join(", ", parts);
    }

    /** Lists the silences longer than MIN_SILENT_S and MIN_SILENT_INTERVALS record intervals. */
    private static String silent(RawLog log, double intervalS) {
        int places = 0;
        double lostS = 0;
        int firstLine = 0;
        for (int i = 1; i < log.records; i++) {
            double stepS = log.timeS[i] - log.timeS[i - 1];
            if (stepS > Math.max(MIN_SILENT_S, MIN_SILENT_INTERVALS * intervalS)) {
                firstLine = places++ == 0 ? log.line[i] : firstLine;
                lostS += stepS;
            }
        }
        return places == 0
                ? "nowhere"
                : String.format(
                        Locale.ROOT,
                        "in %d %s, %.0f s in all; the first before line %d",
                        places,
                        places == 1 ? "place" : "places",
                        lostS,
                        firstLine);
    }

    private static String place(RawLog log) {
        double south = 90;
        double north = -90;
        double west = 180;
        double east = -180;
        for (int i = 0; i < log.records; i++) {
            south = Math.min(south, log.latDeg[i]);
            north = Math.max(north, log.latDeg[i]);
            west = Math.min(west, log.lonDeg[i]);
            east = Math.max(east, log.lonDeg[i]);
        }
        return String.format(Locale.ROOT, "latitude %.6f to %.6f, longitude %.6f to %.6f", south, north, west, east);
    }

    private static String instant(double timeS) {
        Instant instant = Instant.ofEpochMilli(Math.round(timeS * 1000));
        return instant.truncatedTo(ChronoUnit.MILLIS)
                .toString()
                .replace('T', ' ')
                .replace("Z", "");
    }

    /** Formats with three significant digits, without trailing zeros. */
    private static String figures(double value) {
        return new BigDecimal(value)
                .round(new MathContext(3))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String span(double seconds) {
        long whole = Math.round(seconds);
        return String.format(Locale.ROOT, "%d h %02d min %02d s", whole / 3600, whole / 60 % 60, whole % 60);
    }

    static void line(StringBuilder text, String label, String value) {
        text.append(String.format(Locale.ROOT, "  %-8s %s%n", label, value));
    }
}
