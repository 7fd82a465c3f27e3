package io.rowledger.document.text;

import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.text.VisibleText;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Arguments of a message as text, in one language and unit system. */
record ArgumentFormat(Messages messages, UnitFormat units) {
    /**
     * One argument.
     *
     * @param style from the pattern; empty for the usual form
     * @throws IllegalStateException for a style that the argument doesn't have
     */
    String text(Argument argument, String style) {
        if (style.equals("capital")) {
            return Wording.label(text(argument, ""));
        }
        if (argument instanceof Argument.Sequence sequence) {
            return sequence(sequence, style);
        }
        if (argument instanceof Message message && style.isEmpty()) {
            return messages.text(message);
        }
        if (argument instanceof Argument.Text text && style.isEmpty()) {
            return VisibleText.line(text.text());
        }
        if (argument instanceof Argument.Physical value) {
            return physical(value, style);
        }
        if (argument instanceof Argument.Bounded value) {
            return bounded(value, style);
        }
        if (argument instanceof Argument.Time time) {
            return time(time.epochS(), style);
        }
        return plain(argument, style);
    }

    private String plain(Argument argument, String style) {
        if (argument instanceof Argument.Percent percent && style.equals("signed")) {
            return units.signedPercent(percent.percent());
        }
        if (argument instanceof Argument.Count count && style.equals("plain")) {
            return Long.toString(count.value());
        }
        if (!style.isEmpty()) {
            throw unknown(style, argument);
        }
        if (argument instanceof Argument.Count count) {
            return units.count(count.value());
        }
        if (argument instanceof Argument.Decimal decimal) {
            return units.fixed(decimal.value(), decimal.decimals());
        }
        if (argument instanceof Argument.Percent percent) {
            return units.percent(percent.percent());
        }
        if (argument instanceof Argument.Area area) {
            return units.areaBeside(area.areaM2(), area.besideM2());
        }
        if (argument instanceof Argument.BoundedArea area) {
            QuantityKind kind = units.kindBeside(area.areaM2(), area.areaM2());
            return Double.isFinite(area.lowM2())
                    ? units.within(kind, area.areaM2(), area.lowM2(), area.highM2())
                    : units.anyArea(area.areaM2());
        }
        if (argument instanceof Argument.Duration duration) {
            return units.duration(duration.seconds());
        }
        if (argument instanceof Argument.Place place) {
            return units.place(place.latDeg(), place.lonDeg());
        }
        if (argument instanceof Argument.Heading heading) {
            return units.compass(heading.headingRad());
        }
        throw unknown(style, argument);
    }

    private String physical(Argument.Physical value, String style) {
        return switch (style) {
            case "" -> units.text(value.kind(), value.si());
            case "number" -> units.number(value.kind(), value.si());
            case "unit" -> units.unit(value.kind());
            default -> throw unknown(style, value);
        };
    }

    private String bounded(Argument.Bounded value, String style) {
        return switch (style) {
            case "" -> units.within(value.kind(), value.si(), value.lowSi(), value.highSi());
            case "value" -> units.valueWithin(value.kind(), value.si(), value.lowSi(), value.highSi());
            case "bounds" -> units.bounds(value.kind(), value.si(), value.lowSi(), value.highSi());
            default -> throw unknown(style, value);
        };
    }

    private String time(double epochS, String style) {
        return switch (style) {
            case "" -> units.dateAndTime(epochS);
            case "date" -> units.day(epochS);
            case "minute" -> units.minute(epochS);
            case "clock" -> units.clock(epochS);
            default -> throw unknown(style, new Argument.Time(epochS));
        };
    }

    /** {@code a, b, c}; {@code a, b and c}; {@code a, b or c}; {@code 3, 5–8} for whole numbers in rising order. */
    private String sequence(Argument.Sequence sequence, String style) {
        List<Argument> values = sequence.values();
        return switch (style) {
            case "" -> String.join(", ", texts(values));
            case "sentences" -> String.join(" ", texts(values));
            case "and" -> joined(values, "words.list.and");
            case "or" -> joined(values, "words.list.or");
            case "ranges" -> Wording.ranges(values.stream().map(this::whole).toList());
            default -> throw unknown(style, sequence);
        };
    }

    private String joined(List<Argument> values, String lastPair) {
        if (values.size() < 2) {
            return String.join(", ", texts(values));
        }
        int last = values.size() - 1;
        String first = String.join(", ", texts(values.subList(0, last)));
        return messages.text(lastPair, first, text(values.get(last), ""));
    }

    private List<String> texts(List<Argument> values) {
        List<String> texts = new ArrayList<>(values.size());
        values.forEach(value -> texts.add(text(value, "")));
        return texts;
    }

    private Integer whole(Argument argument) {
        if (argument instanceof Argument.Count count) {
            return Math.toIntExact(count.value());
        }
        throw unknown("ranges", argument);
    }

    /** The number that a choice or plural goes by: a sequence counts its values. */
    static double chooser(Argument argument) {
        if (argument instanceof Argument.Count count) {
            return count.value();
        }
        if (argument instanceof Argument.Decimal decimal) {
            return decimal.value();
        }
        if (argument instanceof Argument.Percent percent) {
            return percent.percent();
        }
        if (argument instanceof Argument.Sequence sequence) {
            return sequence.values().size();
        }
        throw unknown("choice", argument);
    }

    private static IllegalStateException unknown(String style, Argument argument) {
        return new IllegalStateException("no style \"" + style + "\" for " + argument);
    }
}
