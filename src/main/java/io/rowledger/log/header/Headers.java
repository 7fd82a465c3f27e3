package io.rowledger.log.header;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.source.CsvLines;
import io.rowledger.log.source.Line;
import io.rowledger.units.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The line of column names. It may follow a preamble, stand in a comment, or have the units in the line below it.
 *
 * @param names names with their units
 * @param raw fields of the line as written
 * @param line line number, from 1
 */
public record Headers(List<String> names, List<String> raw, int line) {
    /** Lines searched for the header. */
    private static final int MAX_PREAMBLE = 30;
    /** Fewest known names of a header below other lines. */
    private static final int NAMES = 3;
    /** Fewest known names of a header in the first line. */
    private static final int ENOUGH = 2;

    /** Characters of a line that a refusal shows. */
    private static final int MAX_SHOWN = 120;

    private static final Set<String> NO_UNIT = Set.of(
            "", "-", "--", "0/1", "1/0", "n/a", "na", "none", "bool", "text", "string", "flag", "int", "float", "iso",
            "iso8601");

    /** Copies the lists. */
    public Headers {
        names = List.copyOf(names);
        raw = List.copyOf(raw);
    }

    /** Reads the header; the next line is the first one below it. */
    public static Headers read(
            String file, CsvLines lines, @Nullable Line commented, LogOptions options, Questions questions) {
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
            throw UnusableInputException.found("a file without lines")
                    .kind(RefusalKind.DAMAGED)
                    .inFile(file)
                    .expected("column names in the first line")
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
        requireNames(file, header, options, questions);
        for (int i = read.size() - 1; i > at; i--) {
            lines.push(read.get(i));
        }
        List<String> raw = stripped(header.fields());
        return new Headers(withUnits(raw, lines), raw, header.number());
    }

    /** Refuses a first line of values, and one in which no name is known. */
    private static void requireNames(String file, Line header, LogOptions options, Questions questions) {
        String[] fields = header.fields();
        if (known(fields) + chosen(fields, options) > 0) {
            return;
        }
        long values = Arrays.stream(fields)
                .map(String::strip)
                .filter(field -> !field.isEmpty() && startsNumeric(field))
                .count();
        String names = String.join(", ", fields);
        String shown = names.length() > MAX_SHOWN ? names.substring(0, MAX_SHOWN) + "..." : names;
        if (2 * values >= fields.length) {
            throw UnusableInputException.found("no line of column names: the first line holds values, " + shown)
                    .inFile(file)
                    .atLine(header.number())
                    .expected("column names in the first line, such as time,lat,lon,flow_01[gal/min]")
                    .hint("add a first line with a name for each of the " + fields.length
                            + " columns, with the unit of each flow, rate and speed");
        }
        questions.ask(UnusableInputException.found("no column name that is known: " + shown)
                .inFile(file)
                .atLine(header.number())
                .expected("names such as time, lat, lon, flow_01[gal/min] or rate[gal/ac]")
                .hint(
                        "rename the columns, or name their headers under columns in the rig file, such as columns: {lat: \""
                                + fields[0].strip() + "\"}"));
    }

    private static boolean isComment(Line line) {
        return line.fields().length > 0 && (line.fields()[0].startsWith("//") || line.fields()[0].startsWith(";"));
    }

    /** Adds the units from the second line, if it is a line of units. */
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

    /** Returns true for a line with at least one unit and no number. */
    static boolean isUnits(String[] fields) {
        int units = 0;
        for (String field : fields) {
            String unit = unit(field);
            if (Unit.findAny(unit).isPresent()) {
                units++;
            } else if (!NO_UNIT.contains(unit.toLowerCase(Locale.ROOT)) && startsNumeric(unit)) {
                return false;
            }
        }
        return units > 0;
    }

    private static boolean startsNumeric(String text) {
        char c = text.charAt(0);
        return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.' || c == ',';
    }

    /** Returns the number of fields that name a quantity. */
    static int known(String[] fields) {
        int known = 0;
        for (String field : fields) {
            Optional<ColumnName> name = ColumnName.of(field);
            known += name.isPresent() && !name.get().role().quantity().isHelper() ? 1 : 0;
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

    /** Returns a name on one line: a spreadsheet may break a long one. */
    static String spaced(String name) {
        return name.strip().replaceAll("\\s*[\\r\\n]+\\s*", " ");
    }

    private static List<String> stripped(String[] line) {
        List<String> headers = new ArrayList<>();
        for (String header : line) {
            headers.add(spaced(header));
        }
        while (headers.size() > 1 && headers.get(headers.size() - 1).isEmpty()) {
            headers.remove(headers.size() - 1);
        }
        return headers;
    }
}
