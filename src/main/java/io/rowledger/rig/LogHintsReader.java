package io.rowledger.rig;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogHints.Counts;
import io.rowledger.log.header.LogHints.DateOrder;
import io.rowledger.units.Dimension;
import io.rowledger.units.Unit;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The {@code log:} block: what nobody can tell from the logs themselves. */
final class LogHintsReader {
    private static final Pattern PULSES =
            Pattern.compile("(\\d{1,9}(?:\\.\\d{1,9})?)\\s*(?:pulses\\s*)?(?:/|per\\b)\\s*(.+)");
    /** Weeks since 1980 that end in 2100. */
    private static final int LAST_WEEK = 6300;

    private LogHintsReader() {}

    static LogHints read(YamlMap log) {
        log.only("zone", "date", "date_order", "gps_week", "counts", "pulses", "flow_unit", "not_needed");
        return new LogHints(
                zone(log),
                date(log),
                order(log),
                week(log),
                counts(log),
                pulsesPerL(log),
                flowUnit(log),
                notNeeded(log));
    }

    private static Set<String> notNeeded(YamlMap log) {
        return log.scalars("not_needed").stream().map(YamlMap.Scalar::text).collect(Collectors.toSet());
    }

    private static @Nullable ZoneId zone(YamlMap log) {
        if (!log.hasMore("zone")) {
            return null;
        }
        String zone = log.text("zone", "a zone").strip();
        try {
            return ZoneId.of(zone);
        } catch (DateTimeException e) {
            throw fault(log, "zone", zone)
                    .expected(
                            "a name of the time zone data base such as America/Chicago, or an offset such as \"-05:00\"")
                    .hint("write the zone the logger's clock was set to");
        }
    }

    private static @Nullable LocalDate date(YamlMap log) {
        if (!log.hasMore("date")) {
            return null;
        }
        String date = log.text("date", "a day").strip();
        try {
            return LocalDate.parse(date);
        } catch (DateTimeException e) {
            throw fault(log, "date", date)
                    .expected("a day, year first, such as 2026-05-14")
                    .hint("write the day on which the log starts");
        }
    }

    private static @Nullable DateOrder order(YamlMap log) {
        if (!log.hasMore("date_order")) {
            return null;
        }
        String text = log.text("date_order", "an order").strip();
        for (DateOrder order : DateOrder.values()) {
            if (order.word().equals(text)) {
                return order;
            }
        }
        throw fault(log, "date_order", text)
                .expected("month-day-year, day-month-year or year-month-day")
                .hint("write the order in which the dates of the log stand");
    }

    private static int week(YamlMap log) {
        if (!log.hasMore("gps_week")) {
            return 0;
        }
        double week = log.number("gps_week", "a whole number of weeks since 1980-01-06, such as 2418");
        if (!(week >= 1 && week <= LAST_WEEK) || week != Math.rint(week)) {
            throw fault(log, "gps_week", log.text("gps_week", "a week"))
                    .expected("a whole number of weeks since 1980-01-06, such as 2418 for the week of 2026-05-10")
                    .hint("write the week in which the log starts");
        }
        return (int) week;
    }

    private static @Nullable Counts counts(YamlMap log) {
        if (!log.hasMore("counts")) {
            return null;
        }
        String text = log.text("counts", "a word").strip();
        for (Counts counts : Counts.values()) {
            if (counts.word().equals(text)) {
                return counts;
            }
        }
        throw fault(log, "counts", text)
                .expected("since_last or total")
                .hint("write since_last if each figure counts from the record before, total if it rises all the time");
    }

    private static double pulsesPerL(YamlMap log) {
        if (!log.hasMore("pulses")) {
            return Double.NaN;
        }
        String text = log.text("pulses", "a figure").strip();
        Matcher m = PULSES.matcher(text);
        Optional<Unit> unit = m.matches() ? Unit.find(m.group(2), Dimension.VOLUME) : Optional.empty();
        double pulses = unit.isPresent() ? Double.parseDouble(m.group(1)) : 0;
        if (unit.isEmpty() || pulses <= 0) {
            throw fault(log, "pulses", text)
                    .expected("pulses for a volume, such as 2800 per gal")
                    .hint("write the calibration figure of the row meters with its unit");
        }
        return pulses / unit.get().toSi();
    }

    private static @Nullable Unit flowUnit(YamlMap log) {
        if (!log.hasMore("flow_unit")) {
            return null;
        }
        String text = log.text("flow_unit", "a unit").strip();
        return Unit.find(text, Dimension.FLOW)
                .orElseThrow(() -> fault(log, "flow_unit", text)
                        .expected("a unit of flow: " + Dimension.FLOW.unitsToWrite())
                        .hint("write the unit the flow columns are in"));
    }

    private static UnusableInputException fault(YamlMap log, String key, String text) {
        return log.fault(key, "\"" + text + "\"");
    }
}
