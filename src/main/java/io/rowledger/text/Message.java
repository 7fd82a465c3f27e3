package io.rowledger.text;

import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.List;

/**
 * Text for people without its words: the key of a pattern in a message bundle and the values that go into it.
 *
 * @param key such as {@code findings.plugged.title}; its first part names the bundle
 * @param arguments the values of {@code {0}}, {@code {1}} and so on
 */
public record Message(String key, List<Argument> arguments) implements Argument {
    public Message {
        arguments = List.copyOf(arguments);
    }

    /**
     * A message from plain values: strings, whole numbers, instants, messages, other arguments, and lists of these.
     *
     * @throws IllegalArgumentException for a value of another type; a floating point number needs a kind that says how
     *     it is printed, see the methods below
     */
    public static Message of(String key, Object... values) {
        return new Message(key, arguments(List.of(values)));
    }

    /** A number without a unit, with this many decimals. */
    public static Argument decimal(double value, int decimals) {
        return new Argument.Decimal(value, decimals);
    }

    /** A percentage, 4.2 for 4.2 %. */
    public static Argument percent(double percent) {
        return new Argument.Percent(percent);
    }

    /** A physical value in SI. */
    public static Argument value(QuantityKind kind, double si) {
        return new Argument.Physical(kind, si);
    }

    /** A physical value with its bounds, all in SI. */
    public static Argument within(QuantityKind kind, double si, double lowSi, double highSi) {
        return new Argument.Bounded(kind, si, lowSi, highSi);
    }

    /** An area of any size in m², in acres or square feet, whichever suits it. */
    public static Argument area(double areaM2) {
        return new Argument.Area(areaM2, areaM2);
    }

    /** An area in m² that stands beside a larger one and takes its unit. */
    public static Argument area(double areaM2, double besideM2) {
        return new Argument.Area(areaM2, besideM2);
    }

    /** An area of any size in m² with its bounds. */
    public static Argument areaWithin(double areaM2, double lowM2, double highM2) {
        return new Argument.BoundedArea(areaM2, lowM2, highM2);
    }

    /** A length of time, s. */
    public static Argument duration(double seconds) {
        return new Argument.Duration(seconds);
    }

    /** A point in time, epoch seconds. */
    public static Argument time(double epochS) {
        return new Argument.Time(epochS);
    }

    /** A place, degrees on WGS 84. */
    public static Argument place(double latDeg, double lonDeg) {
        return new Argument.Place(latDeg, lonDeg);
    }

    /** A direction, rad clockwise from north. */
    public static Argument heading(double headingRad) {
        return new Argument.Heading(headingRad);
    }

    private static List<Argument> arguments(List<?> values) {
        List<Argument> arguments = new ArrayList<>(values.size());
        for (Object value : values) {
            arguments.add(argument(value));
        }
        return arguments;
    }

    private static Argument argument(Object value) {
        if (value instanceof Argument argument) {
            return argument;
        }
        if (value instanceof String text) {
            return new Argument.Text(text);
        }
        if (value instanceof Integer || value instanceof Long) {
            return new Argument.Count(((Number) value).longValue());
        }
        if (value instanceof java.time.Instant instant) {
            return new Argument.Time(instant.getEpochSecond() + instant.getNano() / 1e9);
        }
        if (value instanceof List<?> list) {
            return new Argument.Sequence(arguments(list));
        }
        throw new IllegalArgumentException(
                "a message can't hold " + value + " (" + value.getClass().getName() + ")");
    }
}
