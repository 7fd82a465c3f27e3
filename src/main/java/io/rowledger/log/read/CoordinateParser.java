package io.rowledger.log.read;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.FormatUnits;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.Line;
import io.rowledger.log.source.NumberParser;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Parses positions that are not plain decimal degrees: degrees and minutes (NMEA 0183 or separated), seconds, hemisphere
 * letters in the field or in a separate column.
 */
final class CoordinateParser {
    private static final double MINUTES = 60;
    /** Smallest DDMM.mmmm value of one degree. */
    private static final double ONE_DEGREE = 100;

    private final ColumnPlan.Column lat;
    private final ColumnPlan.Column lon;
    private final int latSide;
    private final int lonSide;
    private final boolean together;
    private final char mark;

    private CoordinateParser(LogPreview preview, int latSide, int lonSide, boolean together) {
        this.lat = column(preview, LogQuantity.LAT);
        this.lon = column(preview, LogQuantity.LON);
        this.latSide = latSide;
        this.lonSide = lonSide;
        this.together = together;
        this.mark = preview.mark();
    }

    /** Returns the parser for the file; null for plain decimal degrees. */
    static @Nullable CoordinateParser of(LogPreview preview) {
        ColumnPlan.Column lat = column(preview, LogQuantity.LAT);
        ColumnPlan.Column lon = column(preview, LogQuantity.LON);
        int latSide = side(preview, LogQuantity.LAT_SIDE, "NS");
        int lonSide = side(preview, LogQuantity.LON_SIDE, "EW");
        boolean sides = latSide >= 0 && lonSide >= 0;
        boolean letters = hasMarks(preview, lat) || hasMarks(preview, lon);
        boolean form =
                lat.unit().equals(FormatUnits.DEGREES_MINUTES) || lon.unit().equals(FormatUnits.DEGREES_MINUTES);
        boolean together = form || isTogether(preview, lat, lon);
        if (together && !form && !sides && !letters) {
            throw ask(preview, lat, lon);
        }
        if (!sides && !letters && !form) {
            return null;
        }
        return new CoordinateParser(preview, sides ? latSide : -1, sides ? lonSide : -1, together);
    }

    private static ColumnPlan.Column column(LogPreview preview, LogQuantity quantity) {
        ColumnPlan.Column column = preview.plan().find(quantity);
        if (column == null) {
            throw new IllegalStateException("a plan has a position");
        }
        return column;
    }

    /** Returns the index of the hemisphere column, or -1 if the column holds no hemisphere letters. */
    private static int side(LogPreview preview, LogQuantity quantity, String letters) {
        ColumnPlan.Column column = preview.plan().find(quantity);
        if (column == null) {
            return -1;
        }
        List<String> texts = preview.texts(column.index());
        boolean all = !texts.isEmpty()
                && texts.stream().allMatch(t -> letters.indexOf(Character.toUpperCase(t.charAt(0))) >= 0);
        return all ? column.index() : -1;
    }

    /** Returns true if a value has a hemisphere letter, a degree sign or a space between numbers. */
    private static boolean hasMarks(LogPreview preview, ColumnPlan.Column column) {
        for (String text : preview.texts(column.index())) {
            if (text.matches("(?s).*\\d.*")
                    && text.matches("(?is)[-+\u2212\\d.,\\s\u00b0\u00ba\ufffd'\"\u2032\u2033\u2019\u201dnsewd:]*")
                    && text.matches("(?is).*([nsew\u00b0\u00ba\ufffd\u2212]|\\d\\s+\\d).*")) {
                return true;
            }
        }
        return false;
    }

    /** Returns true if a value is too large for degrees and all values can be DDMM.mmmm. */
    private static boolean isTogether(LogPreview preview, ColumnPlan.Column lat, ColumnPlan.Column lon) {
        boolean beyond = false;
        boolean any = false;
        for (Line line : preview.first()) {
            double y = figure(line, lat, preview.mark());
            double x = figure(line, lon, preview.mark());
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

    /** Returns the absolute value of the number in a field, ignoring letters. */
    private static double figure(Line line, ColumnPlan.Column column, char mark) {
        if (column.index() >= line.fields().length) {
            return Double.NaN;
        }
        String text = line.fields()[column.index()].replaceAll("[\\sNSEWnsew+\u2212-]", "");
        return NumberParser.parse(text, mark);
    }

    private static UnusableInputException ask(LogPreview preview, ColumnPlan.Column lat, ColumnPlan.Column lon) {
        String latText = preview.texts(lat.index()).get(0);
        String lonText = preview.texts(lon.index()).get(0);
        double y = NumberParser.parse(latText, preview.mark());
        double x = NumberParser.parse(lonText, preview.mark());
        return preview.found(
                        lat,
                        String.format(
                                Locale.ROOT,
                                "\"%s\" beside \"%s\", which is latitude %.6f, longitude %.6f as "
                                        + "degrees and minutes (ddmm.mmmm), and no place on the globe as degrees; it "
                                        + "could also be meters of a map grid",
                                latText,
                                lonText,
                                signed(y, split(y)),
                                signed(x, split(x))))
                .expected("degrees, or a header that says degrees and minutes")
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

    /** Returns the latitude, degrees; NaN if the fields hold none. */
    double latDeg(String[] fields) {
        return degrees(fields[lat.index()], latSide < 0 ? "" : fields[latSide], 'N', 'S');
    }

    /** Returns the longitude, degrees; NaN if the fields hold none. */
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
        // Seconds and minutes that were rounded up to 60 stand as 60.
        boolean whole = minutes <= MINUTES && seconds <= MINUTES && minutes + seconds / MINUTES <= MINUTES;
        return whole ? figures.get(0) + minutes / MINUTES + seconds / (MINUTES * MINUTES) : Double.NaN;
    }

    /** Returns the helper quantities it reads in addition to the position. */
    List<LogQuantity> helpers() {
        return latSide < 0 ? List.of() : List.of(LogQuantity.LAT_SIDE, LogQuantity.LON_SIDE);
    }

    /** Returns how it reads, for the table of columns. */
    List<Message> remarks() {
        Message how = Message.of(together ? "notes.column.minutes" : "notes.column.degrees");
        return latSide < 0 ? List.of(how) : List.of(how, Message.of("notes.column.sides"));
    }
}
