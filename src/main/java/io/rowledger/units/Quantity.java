package io.rowledger.units;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A value with its dimension, read from text such as {@code 5.9 m}, {@code 19 ft 4 in}, {@code 11.06 lb/gal}.
 *
 * @param si value in the unit that {@link Dimension} names
 * @param dimension its dimension
 */
public record Quantity(double si, Dimension dimension) implements Reading {
    /** Sign, number, and the text after it up to the next number (its unit). */
    private static final Pattern TERM = Pattern.compile(
            "\\s*([+-]?)\\s*((?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,2})?)\\s*+([^\\d+\\-.][^+\\-.]*?)?"
                    + "(?=$|\\s+\\.?\\d|(?<=['\"])\\s*\\.?\\d)");

    /** A comma that may separate thousands or decimals. */
    private static final Pattern THOUSANDS_COMMA = Pattern.compile("\\d,\\d{3}(?!\\d)");

    private static final Pattern DECIMAL_COMMA = Pattern.compile("\\d,\\d");

    /**
     * Reads a quantity of one dimension. Two terms add up for lengths and times ({@code 19 ft 4 in}); the first has the
     * larger unit.
     *
     * @return a {@link Quantity}, or a {@link Refusal} if the text is no quantity of this dimension
     */
    public static Reading read(String text, Dimension dimension) {
        if (dimension == Dimension.TEMPERATURE) {
            return Temperature.read(text);
        }
        String plain = text.strip()
                .replace('\u2212', '-')
                .replace('\u00a0', ' ')
                .replace('\u2032', '\'')
                .replace('\u2033', '"');
        if (DECIMAL_COMMA.matcher(plain).find()) {
            return unreadable(text, dimension);
        }
        if (plain.isEmpty()) {
            return refuse("nothing", dimension, "write " + dimension.words() + " such as " + dimension.example());
        }
        List<String> figures = new ArrayList<>();
        List<String> units = new ArrayList<>();
        boolean negative = false;
        Matcher term = TERM.matcher(plain);
        int at = 0;
        while (at < plain.length() && term.find(at) && term.start() == at) {
            if (at > 0 && !term.group(1).isEmpty()) {
                return unreadable(text, dimension);
            }
            negative |= term.group(1).equals("-");
            figures.add(term.group(2));
            units.add(term.group(3) == null ? "" : term.group(3).strip());
            at = term.end();
        }
        if (at != plain.length() || figures.isEmpty() || figures.size() > 2) {
            return unreadable(text, dimension);
        }
        return sum(text, dimension, figures, units, negative);
    }

    private static Reading sum(
            String text, Dimension dimension, List<String> figures, List<String> units, boolean negative) {
        double si = 0;
        double lastFactor = Double.POSITIVE_INFINITY;
        for (int i = 0; i < figures.size(); i++) {
            String name = units.get(i);
            if (name.isEmpty()) {
                return withoutUnit(text, dimension, figures, negative);
            }
            Optional<Unit> unit = Unit.find(name, dimension);
            if (unit.isEmpty()) {
                return wrongUnit(text, name, dimension);
            }
            double factor = unit.get().toSi();
            if (factor >= lastFactor || (i > 0 && dimension != Dimension.LENGTH && dimension != Dimension.TIME)) {
                return unreadable(text, dimension);
            }
            lastFactor = factor;
            si += Double.parseDouble(figures.get(i)) * factor;
        }
        return new Quantity(negative ? -si : si, dimension);
    }

    private static Refusal withoutUnit(String text, Dimension dimension, List<String> figures, boolean negative) {
        String figure = (negative ? "-" : "") + figures.get(0);
        return refuse(
                quoted(text) + ", a figure without a unit",
                dimension,
                figures.size() > 1
                        ? "write every figure with its unit, such as 19 ft 4 in"
                        : "write the unit: " + inEveryUnit(figure, dimension) + ", whichever it is");
    }

    /** The figure with each unit that a message proposes: "5.9 m, 5.9 ft or 5.9 in". */
    private static String inEveryUnit(String figure, Dimension dimension) {
        return figure + " "
                + dimension.unitsToWrite().replace(", ", ", " + figure + " ").replace(" or ", " or " + figure + " ");
    }

    private static Refusal wrongUnit(String text, String name, Dimension dimension) {
        Optional<Unit> other = Unit.findAny(name);
        String found = other.isPresent()
                ? quoted(text) + ", " + other.get().dimension().words()
                : quoted(text) + " with the unknown unit " + quoted(name);
        return refuse(found, dimension, "write it as in " + dimension.example());
    }

    private static Refusal unreadable(String text, Dimension dimension) {
        if (THOUSANDS_COMMA.matcher(text).find()) {
            return refuse(
                    quoted(text),
                    dimension,
                    "write thousands without a comma and decimals with a point, as in " + dimension.example());
        }
        boolean comma = text.indexOf(',') >= 0;
        return refuse(
                quoted(text),
                dimension,
                comma
                        ? "write the decimals with a point, as in " + dimension.example()
                        : "write it as in " + dimension.example());
    }

    private static Refusal refuse(String found, Dimension dimension, String hint) {
        return new Refusal(found, dimension.words() + " in " + dimension.unitsToWrite(), hint);
    }

    private static String quoted(String text) {
        return "\"" + text.strip() + "\"";
    }
}
