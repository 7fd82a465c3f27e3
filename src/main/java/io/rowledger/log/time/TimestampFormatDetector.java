package io.rowledger.log.time;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.FormatUnits;
import io.rowledger.log.header.LogHints.DateOrder;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.NumberParser;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Decides from the first records how the times of a file are written, or asks where they can be read two ways. */
public final class TimestampFormatDetector {
    /** Above this share of the first records a way of reading them is theirs; a few may be damaged. */
    private static final double MOST = 0.5;

    private static final double DAY_S = 86_400;
    private static final double WEEK_S = 604_800;

    private TimestampFormatDetector() {}

    /** The clock for the file; null where each time is a plain ISO 8601 or epoch field. */
    public static @Nullable TimestampReader of(LogPreview sample) {
        ColumnPlan.Column time = sample.plan().find(LogQuantity.TIME);
        if (time == null) {
            return GpsTimeReader.of(sample);
        }
        ColumnPlan.Column date = sample.plan().find(LogQuantity.DATE);
        List<String> texts = sample.texts(time.index());
        if (texts.isEmpty()) {
            return null;
        }
        if (date == null && isOfTheWeek(sample, time, texts)) {
            return GpsTimeReader.of(sample);
        }
        if (!Double.isNaN(time.toSi())) {
            boolean ofDay = date != null && texts.stream().allMatch(t -> NumberParser.parse(t, sample.mark()) <= DAY_S);
            return ofDay ? dated(sample, time, date, LocalTimestampReader.Form.SECONDS_OF_DAY) : null;
        }
        if (time.unit().isEmpty() && isPlain(sample, texts)) {
            return null;
        }
        LocalTimestampReader.Form form = time.unit().equals(FormatUnits.HOURS_MINUTES_SECONDS)
                ? LocalTimestampReader.Form.HHMMSS
                : form(sample, time, date, texts);
        return form == null ? null : dated(sample, time, date, form);
    }

    /** Seconds no week is longer than beside a column of GPS weeks: "GPS week, GPS time". */
    private static boolean isOfTheWeek(LogPreview sample, ColumnPlan.Column time, List<String> texts) {
        ColumnPlan.Column week = sample.plan().find(LogQuantity.GPS_WEEK);
        boolean inUnit = !time.unit().isEmpty()
                && !time.unit().equals("s")
                && !time.unit().equals("ms");
        if (week == null || inUnit || sample.texts(week.index()).isEmpty()) {
            return false;
        }
        double factor = time.unit().equals("ms") ? time.toSi() : 1;
        return texts.stream().allMatch(text -> {
            double s = NumberParser.parse(text, sample.mark()) * factor;
            return s >= 0 && s <= WEEK_S;
        });
    }

    /** ISO 8601 or seconds since the epoch, with a zone where the rig file has one for those without. */
    private static boolean isPlain(LogPreview sample, List<String> texts) {
        IsoTimestamps timestamps = new IsoTimestamps();
        int plain = 0;
        for (String text : texts) {
            boolean iso = !Double.isNaN(timestamps.read(text));
            plain += iso || NumberParser.parse(text, sample.mark()) >= EpochRange.FIRST_S ? 1 : 0;
        }
        return plain > MOST * texts.size() && (sample.hints().zone() == null || timestamps.withoutZone() == 0);
    }

    /** How the times of day are written, or null where they are none. */
    private static LocalTimestampReader.@Nullable Form form(
            LogPreview sample, ColumnPlan.Column time, ColumnPlan.@Nullable Column date, List<String> texts) {
        TimeOfDay reader = new TimeOfDay();
        int clock = 0;
        int together = 0;
        boolean padded = false;
        for (String text : texts) {
            int split = LocalTimestampReader.split(text);
            clock +=
                    reader.read(text.substring(split).strip()) || !Double.isNaN(new IsoTimestamps().read(text)) ? 1 : 0;
            if (reader.readRunTogether(text)) {
                together++;
                boolean sixDigits = text.length() == 6 || (text.length() > 6 && !Character.isDigit(text.charAt(6)));
                padded |= sixDigits && (text.charAt(0) == '0' || NumberParser.parse(text, sample.mark()) > DAY_S);
            }
        }
        if (clock > MOST * texts.size()) {
            return LocalTimestampReader.Form.CLOCK;
        }
        if (together <= MOST * texts.size() || (date == null && sample.hints().date() == null)) {
            return null;
        }
        if (!padded) {
            throw askTogether(sample, time, texts.get(0));
        }
        return LocalTimestampReader.Form.HHMMSS;
    }

    private static UnusableInputException askTogether(LogPreview sample, ColumnPlan.Column time, String text) {
        TimeOfDay reader = new TimeOfDay();
        reader.readRunTogether(text);
        return sample.found(
                        time,
                        "\"" + text + "\", which is " + clock(reader.secondS())
                                + " if it is hours, minutes and seconds "
                                + "run together, and " + clock(NumberParser.parse(text, sample.mark()))
                                + " if it is seconds since midnight")
                .expected("a time that can be read one way only")
                .hint("write columns: {\"time[hhmmss]\": \"" + time.header() + "\"} in the rig file for the first, "
                        + "columns: {\"time[s]\": \"" + time.header() + "\"} for the second");
    }

    private static String clock(double secondS) {
        return java.time.LocalTime.MIDNIGHT
                .plusSeconds((long) Math.floor(secondS))
                .format(java.time.format.DateTimeFormatter.ISO_LOCAL_TIME);
    }

    private static LocalTimestampReader dated(
            LogPreview sample,
            ColumnPlan.Column time,
            ColumnPlan.@Nullable Column date,
            LocalTimestampReader.Form form) {
        List<String> dates = new ArrayList<>();
        boolean inTime = false;
        if (date != null) {
            dates.addAll(sample.texts(date.index()));
        } else if (form == LocalTimestampReader.Form.CLOCK) {
            for (String text : sample.texts(time.index())) {
                int split = LocalTimestampReader.split(text);
                inTime |= split > 0;
                if (split > 0) {
                    dates.add(text.substring(0, split).strip());
                }
            }
            inTime |= sample.texts(time.index()).stream().noneMatch(text -> text.indexOf(':') >= 0);
        }
        if (date == null && !inTime && sample.hints().date() == null) {
            String text = sample.texts(time.index()).get(0);
            List<String> alternatives = sample.plan().rivalDates();
            if (!alternatives.isEmpty()) {
                throw sample.found(
                                time,
                                "the time of day \"" + text + "\" beside two dates, "
                                        + String.join(" and ", alternatives))
                        .expected("one date that goes with it")
                        .hint("write columns: {date: \"" + alternatives.get(0) + "\"} or columns: {date: \""
                                + alternatives.get(1) + "\"} in the rig file");
            }
            throw sample.found(time, "the time of day \"" + text + "\" without a date")
                    .expected("a date with the time, in the same column or in one named date")
                    .hint("write log: {date: 2026-05-14} in the rig file, with the day on which the log starts");
        }
        ColumnPlan.Column asked = date == null ? time : date;
        DateOrder order = order(sample, asked, dates);
        return new LocalTimestampReader(sample, time, date, alike(sample, asked, dates, order), form);
    }

    /** The order and those that make the same dates of all texts so far: 05/05 tells nothing, 06/05 below it asks. */
    private static List<DateOrder> alike(
            LogPreview sample, ColumnPlan.Column column, List<String> texts, DateOrder order) {
        List<DateOrder> orders = new ArrayList<>(List.of(order));
        boolean said = sample.hints().dateOrder() != null || !column.unit().isEmpty();
        for (DateOrder other : said ? new DateOrder[0] : DateOrder.values()) {
            boolean same = other != order && !texts.isEmpty();
            for (String text : texts) {
                LocalDate date = DateFormats.read(text, order);
                same &= date == null || date.equals(DateFormats.read(text, other));
            }
            if (same) {
                orders.add(other);
            }
        }
        return orders;
    }

    /** The order of day, month and year, if only one of the three makes dates of all texts. */
    private static DateOrder order(LogPreview sample, ColumnPlan.Column column, List<String> texts) {
        for (DateOrder order : DateOrder.values()) {
            if (column.unit().equals(order.word())) {
                return order;
            }
        }
        DateOrder said = sample.hints().dateOrder();
        if (said != null) {
            return said;
        }
        Map<List<LocalDate>, DateOrder> readings = new LinkedHashMap<>();
        for (DateOrder order : DateOrder.values()) {
            List<LocalDate> dates = new ArrayList<>();
            for (String text : texts) {
                LocalDate date = DateFormats.read(text, order);
                if (date != null
                        && (dates.isEmpty() || !dates.get(dates.size() - 1).equals(date))) {
                    dates.add(date);
                }
            }
            int unread = 0;
            for (String text : texts) {
                unread += DateFormats.read(text, order) == null ? 1 : 0;
            }
            // One stray line must not hide the order of the others.
            if (unread * 10 <= texts.size() && !dates.isEmpty()) {
                readings.putIfAbsent(dates, order);
            }
        }
        if (readings.size() > 1) {
            throw askOrder(sample, column, texts.get(0), readings);
        }
        return readings.isEmpty()
                ? DateOrder.YEAR_MONTH_DAY
                : readings.values().iterator().next();
    }

    private static UnusableInputException askOrder(
            LogPreview sample, ColumnPlan.Column column, String text, Map<List<LocalDate>, DateOrder> readings) {
        List<String> is = new ArrayList<>();
        List<String> write = new ArrayList<>();
        readings.forEach((dates, order) -> {
            is.add(dates.get(0) + " read as " + order.word());
            write.add("log: {date_order: " + order.word() + "}");
        });
        return sample.found(column, "the date \"" + text + "\", which is " + String.join(" and ", is))
                .expected("a date that can be read one way only, such as 2026-05-14")
                .hint("write " + String.join(" or ", write) + " in the rig file");
    }
}
