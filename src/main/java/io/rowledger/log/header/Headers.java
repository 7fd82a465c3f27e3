package io.rowledger.log.header;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.source.CsvLines;
import io.rowledger.log.source.Line;
import io.rowledger.units.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The line of column names of a file: below a few lines of preamble perhaps, behind a comment sign, with the units in a
 * line of their own below it.
 *
 * @param names names with their units, as the columns are understood by
 * @param raw names as they stand in the line
 * @param line its number, from 1
 */
public record Headers(List<String> names, List<String> raw, int line) {
    /** Lines before the header that are looked through for it. */
    private static final int MAX_PREAMBLE = 30;
    /** So many known names make a header of a line. */
    private static final int NAMES = 3;
    /** Names at which a line is the header without looking further. */
    private static final int ENOUGH = 2;

    private static final Set<String> NO_UNIT = Set.of(
            "", "-", "--", "n/a", "na", "none", "bool", "text", "string", "flag", "int", "float", "iso", "iso8601");

    /** Copies the lists. */
    public Headers {
        names = List.copyOf(names);
        raw = List.copyOf(raw);
    }

    /** Reads the header and leaves the lines at the first one below it. */
    public static Headers read(String file, CsvLines lines, @Nullable Line commented, LogOptions options) {
        List<Line> read = new ArrayList<>();
        int at = -1;
        for (Line line = lines.next(); line != null; line = lines.next()) {
            if (isComment(line)) {
                continue;
            }
            read.add(line);
            int known = known(line.fields()) + chosen(line.fields(), options);
            if (known >= NAMES || (read.size() == 1 && known >= ENOUGH)) {
                at = read.size() - 1;
            }
            if (at >= 0 || read.size() == MAX_PREAMBLE) {
                break;
            }
        }
        if (read.isEmpty()) {
            throw UnusableInputException.found("a file without a line")
                    .inFile(file)
                    .expected("a line of column names first")
                    .hint("export the log again");
        }
        Line header;
        if (commented != null && (at < 0 || read.get(at).number() > commented.number() + 1)) {
            header = commented;
            at = -1;
        } else {
            at = Math.max(0, at);
            header = read.get(at);
        }
        for (int i = read.size() - 1; i > at; i--) {
            lines.push(read.get(i));
        }
        List<String> raw = stripped(header.fields());
        return new Headers(withUnits(raw, lines), raw, header.number());
    }

    private static boolean isComment(Line line) {
        return line.fields().length > 0 && (line.fields()[0].startsWith("//") || line.fields()[0].startsWith(";"));
    }

    /** Adds the units of the second line, where it is one of units. */
    private static List<String> withUnits(List<String> raw, CsvLines lines) {
        Line second = lines.next();
        if (second == null) {
            return raw;
        }
        if (!isUnits(second.fields())) {
            lines.push(second);
            return raw;
        }
        List<String> names = new ArrayList<>();
        for (int i = 0; i < raw.size(); i++) {
            String unit = i < second.fields().length ? unit(second.fields()[i]) : "";
            boolean has = raw.get(i).endsWith("]") || raw.get(i).endsWith(")");
            boolean known = Unit.findAny(unit).isPresent()
                    || FormatUnits.isDegreesMinutes(unit)
                    || !FormatUnits.time(unit).isEmpty();
            names.add(known && !has ? raw.get(i) + "[" + unit + "]" : raw.get(i));
        }
        return names;
    }

    private static String unit(String text) {
        String unit = text.strip();
        boolean bracketed = unit.length() > 2
                && ((unit.startsWith("[") && unit.endsWith("]")) || (unit.startsWith("(") && unit.endsWith(")")));
        return bracketed ? unit.substring(1, unit.length() - 1).strip() : unit;
    }

    /** True for a line of units: one at least, and nothing that is a figure. */
    static boolean isUnits(String[] fields) {
        int units = 0;
        for (String field : fields) {
            String unit = unit(field);
            if (Unit.findAny(unit).isPresent()) {
                units++;
            } else if (!NO_UNIT.contains(unit.toLowerCase(Locale.ROOT)) && startsLikeFigure(unit)) {
                return false;
            }
        }
        return units > 0;
    }

    private static boolean startsLikeFigure(String text) {
        char c = text.charAt(0);
        return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.' || c == ',';
    }

    /** How many of the fields are names of quantities. */
    static int known(String[] fields) {
        int known = 0;
        for (String field : fields) {
            Optional<ColumnName> name = ColumnName.of(field);
            known += name.isPresent() && !name.get().role().measured().isHelper() ? 1 : 0;
        }
        return known;
    }

    private static int chosen(String[] fields, LogOptions options) {
        int chosen = 0;
        for (String field : fields) {
            for (String header : options.columns().values()) {
                chosen += ColumnName.plain(header).equals(ColumnName.plain(field)) && !field.isBlank() ? 1 : 0;
            }
        }
        return chosen;
    }

    private static List<String> stripped(String[] line) {
        List<String> headers = new ArrayList<>();
        for (String header : line) {
            headers.add(header.strip());
        }
        while (headers.size() > 1 && headers.get(headers.size() - 1).isEmpty()) {
            headers.remove(headers.size() - 1);
        }
        return headers;
    }
}
