package io.rowledger.log.read;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.FormatUnits;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.Line;
import io.rowledger.log.source.NumberParser;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Positions that are not plain decimal degrees: degrees and minutes run together (NMEA 0183) or apart, with seconds, with
 * the hemisphere's letter in the field or in a column of its own.
 */
final class CoordinateParser {
    private static final double MINUTES = 60;
    /** From one degree on, degrees and minutes run together have three digits and more before the point. */
    private static final double ONE_DEGREE = 100;

    private final ColumnPlan.Column lat;
    private final ColumnPlan.Column lon;
    private final int latSide;
    private final int lonSide;
    private final boolean together;
    private final char mark;

    private CoordinateParser(LogPreview sample, int latSide, int lonSide, boolean together) {
        this.lat = column(sample, LogQuantity.LAT);
        this.lon = column(sample, LogQuantity.LON);
        this.latSide = latSide;
        this.lonSide = lonSide;
        this.together = together;
        this.mark = sample.mark();
    }

    /** How positions are written; null where they are plain. */
    static @Nullable CoordinateParser of(LogPreview sample) {
        ColumnPlan.Column lat = column(sample, LogQuantity.LAT);
        ColumnPlan.Column lon = column(sample, LogQuantity.LON);
        int latSide = side(sample, LogQuantity.LAT_SIDE, "NS");
        int lonSide = side(sample, LogQuantity.LON_SIDE, "EW");
        boolean sides = latSide >= 0 && lonSide >= 0;
        boolean letters = hasMarks(sample, lat) || hasMarks(sample, lon);
        boolean form =
                lat.unit().equals(FormatUnits.DEGREES_MINUTES) || lon.unit().equals(FormatUnits.DEGREES_MINUTES);
        boolean together = form || isTogether(sample, lat, lon);
        if (together && !form && !sides && !letters) {
            throw ask(sample, lat, lon);
        }
        if (!sides && !letters && !form) {
            return null;
        }
        return new CoordinateParser(sample, sides ? latSide : -1, sides ? lonSide : -1, together);
    }

    private static ColumnPlan.Column column(LogPreview sample, LogQuantity measured) {
        ColumnPlan.Column column = sample.plan().find(measured);
        if (column == null) {
            throw new IllegalStateException("a plan has a position");
        }
        return column;
    }

    /** The column with the hemisphere's letter, or -1 where what stands there is none. */
    private static int side(LogPreview sample, LogQuantity measured, String letters) {
        ColumnPlan.Column column = sample.plan().find(measured);
        if (column == null) {
            return -1;
        }
        List<String> texts = sample.texts(column.index());
        boolean all = !texts.isEmpty()
                && texts.stream().allMatch(t -> letters.indexOf(Character.toUpperCase(t.charAt(0))) >= 0);
        return all ? column.index() : -1;
    }

    /** A hemisphere's letter, a sign of degrees or a blank between figures. */
    private static boolean hasMarks(LogPreview sample, ColumnPlan.Column column) {
        for (String text : sample.texts(column.index())) {
            if (text.matches("(?s).*\\d.*")
                    && text.matches("(?is)[-+\u2212\\d.,\\s\u00b0\u00ba\ufffd'\"\u2032\u2033\u2019\u201dnsewd:]*")
                    && text.matches("(?is).*([nsew\u00b0\u00ba\ufffd]|\\d\\s+\\d).*")) {
                return true;
            }
        }
        return false;
    }

    /** True where no degrees could be as large and all figures could be degrees and minutes run together. */
    private static boolean isTogether(LogPreview sample, ColumnPlan.Column lat, ColumnPlan.Column lon) {
        boolean beyond = false;
        boolean any = false;
        for (Line line : sample.first()) {
            double y = figure(line, lat, sample.mark());
            double x = figure(line, lon, sample.mark());
            if (Double.isNaN(x) || Double.isNaN(y) || (x == 0 && y == 0)) {
                continue;
            }
            any = true;
            if (y < ONE_DEGREE
                    || y > 9000
                    || x < ONE_DEGREE
                    || x > 18_000
                    || y % 100 >= MINUTES
                    || x % 100 >= MINUTES) {
                return false;
            }
            beyond |= y > 90;
        }
        return any && beyond;
    }

    /** The size of the one figure in a field, letters and sign left aside. */
    private static double figure(Line line, ColumnPlan.Column column, char mark) {
        if (column.index() >= line.fields().length) {
            return Double.NaN;
        }
        String text = line.fields()[column.index()].replaceAll("[\\sNSEWnsew+\u2212-]", "");
        return NumberParser.parse(text, mark);
    }

    private static UnusableInputException ask(LogPreview sample, ColumnPlan.Column lat, ColumnPlan.Column lon) {
        String latText = sample.texts(lat.index()).get(0);
        String lonText = sample.texts(lon.index()).get(0);
        double y = NumberParser.parse(latText, sample.mark());
        double x = NumberParser.parse(lonText, sample.mark());
        return sample.found(
                        lat,
                        String.format(
                                Locale.ROOT,
                                "\"%s\" beside \"%s\", which is latitude %.6f, longitude %.6f if degrees and minutes are "
                                        + "run together, and no place on the globe if they are degrees; it could be "
                                        + "meters of a map grid too",
                                latText,
                                lonText,
                                signed(y, split(y)),
                                signed(x, split(x))))
                .expected("degrees, or a word that they are degrees and minutes")
                .hint("write columns: {\"lat[ddmm.mmmm]\": \"" + lat.header() + "\", \"lon[ddmm.mmmm]\": \""
                        + lon.header() + "\"} in the rig file for the first; export degrees WGS 84 for the second");
    }

    private static double split(double together) {
        double size = Math.abs(together);
        double degrees = Math.floor(size / 100);
        double minutes = size - degrees * 100;
        return minutes >= MINUTES ? Double.NaN : degrees + minutes / MINUTES;
    }

    private static double signed(double sign, double size) {
        return sign < 0 ? -size : size;
    }

    /** Latitude in degrees; NaN where the fields hold none. */
    double latDeg(String[] fields) {
        return degrees(fields[lat.index()], latSide < 0 ? "" : fields[latSide], 'N', 'S');
    }

    /** Longitude in degrees; NaN where the fields hold none. */
    double lonDeg(String[] fields) {
        return degrees(fields[lon.index()], lonSide < 0 ? "" : fields[lonSide], 'E', 'W');
    }

    private double degrees(String text, String side, char plus, char minus) {
        List<Double> figures = new ArrayList<>(3);
        boolean negative = false;
        int letter = side.isBlank() ? 0 : sign(side.strip().charAt(0), plus, minus);
        if (letter == 0 && !side.isBlank()) {
            return Double.NaN;
        }
        for (int at = 0; at < text.length(); ) {
            char c = text.charAt(at);
            int end = at;
            while (end < text.length() && (Character.isDigit(text.charAt(end)) || text.charAt(end) == mark)) {
                end++;
            }
            if (end > at) {
                figures.add(NumberParser.parse(text.substring(at, end), mark));
                at = end;
                continue;
            }
            if (Character.isLetter(c) && Character.toLowerCase(c) != 'd' && c != '\u00ba') {
                int here = sign(c, plus, minus);
                if (here == 0 || (letter != 0 && here != letter)) {
                    return Double.NaN;
                }
                letter = here;
            }
            negative |= figures.isEmpty() && (c == '-' || c == '\u2212');
            at++;
        }
        double size = size(figures);
        boolean contradictory = negative && letter > 0;
        return contradictory ? Double.NaN : negative || letter < 0 ? -size : size;
    }

    private static int sign(char letter, char plus, char minus) {
        char upper = Character.toUpperCase(letter);
        return upper == plus ? 1 : upper == minus ? -1 : 0;
    }

    private double size(List<Double> figures) {
        if (figures.size() == 1) {
            return together ? split(figures.get(0)) : figures.get(0);
        }
        if (figures.isEmpty() || figures.size() > 3) {
            return Double.NaN;
        }
        double minutes = figures.get(1);
        double seconds = figures.size() == 3 ? figures.get(2) : 0;
        boolean whole = minutes < MINUTES && seconds < MINUTES;
        return whole ? figures.get(0) + minutes / MINUTES + seconds / (MINUTES * MINUTES) : Double.NaN;
    }

    /** The quantities it reads beside the position. */
    List<LogQuantity> helpers() {
        return latSide < 0 ? List.of() : List.of(LogQuantity.LAT_SIDE, LogQuantity.LON_SIDE);
    }

    /** How it reads, for the table of columns. */
    String remark() {
        String how = together ? "degrees and minutes run together" : "degrees as written";
        return latSide < 0 ? how : how + ", hemisphere from its own column";
    }
}
