package io.rowledger.log.time;

import io.rowledger.finding.RefusalKind;
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
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Detects the time format from the first records; throws if two formats fit. */
public final class TimestampFormatDetector {
    /** A format must fit more than this share of the first records; a few may be damaged. */
    private static final double MOST = 0.5;

    private static final double DAY_S = 86_400;
    private static final double WEEK_S = 604_800;
    /** Longitude east of every American zone, degrees. */
    private static final double EAST_OF_AMERICA_DEG = -30;

    private TimestampFormatDetector() {}

    /** Returns the reader for the file; null if each time is a plain ISO 8601 or epoch field. */
    public static @Nullable TimestampReader of(LogPreview preview) {
        ColumnPlan.Column time = preview.plan().find(LogQuantity.TIME);
        if (preview.plan().isUntimed()) {
            return null;
        }
        if (time == null) {
            return GpsTimeReader.of(preview);
        }
        ColumnPlan.Column date = preview.plan().find(LogQuantity.DATE);
        List<String> texts = preview.texts(time.index());
        if (texts.isEmpty()) {
            return null;
        }
        if (date == null && isTimeOfWeek(preview, time, texts)) {
            return GpsTimeReader.of(preview);
        }
        if (!Double.isNaN(time.toSi())) {
            boolean ofDay =
                    date != null && texts.stream().allMatch(t -> NumberParser.parse(t, preview.mark()) <= DAY_S);
            return ofDay ? dated(preview, time, date, LocalTimestampReader.Form.SECONDS_OF_DAY) : null;
        }
        if (time.unit().isEmpty() && preview.plan().find(LogQuantity.HALF_DAY) == null && isPlain(preview, texts)) {
            return null;
        }
        LocalTimestampReader.Form serial = serial(preview, time, date, texts);
        if (serial != null) {
            return dated(preview, time, date, serial);
        }
        LocalTimestampReader.Form form = time.unit().equals(FormatUnits.HOURS_MINUTES_SECONDS)
                ? LocalTimestampReader.Form.HHMMSS
                : form(preview, time, date, texts);
        return form == null ? null : dated(preview, time, date, form);
    }

    /** Returns true for seconds within a week beside a column of GPS weeks: "GPS week, GPS time". */
    private static boolean isTimeOfWeek(LogPreview preview, ColumnPlan.Column time, List<String> texts) {
        ColumnPlan.Column week = preview.plan().find(LogQuantity.GPS_WEEK);
        boolean inUnit = !time.unit().isEmpty()
                && !time.unit().equals("s")
                && !time.unit().equals("ms");
        if (week == null || inUnit || preview.texts(week.index()).isEmpty()) {
            return false;
        }
        double factor = time.unit().equals("ms") ? time.toSi() : 1;
        return texts.stream().allMatch(text -> {
            double s = NumberParser.parse(text, preview.mark()) * factor;
            return s >= 0 && s <= WEEK_S;
        });
    }

    /** Returns true for ISO 8601 or epoch times that need no zone from the rig file. */
    private static boolean isPlain(LogPreview preview, List<String> texts) {
        IsoTimestamps timestamps = new IsoTimestamps();
        int plain = 0;
        for (String text : texts) {
            boolean iso = !Double.isNaN(timestamps.read(text));
            plain += iso || NumberParser.parse(text, preview.mark()) >= EpochRange.MIN_S ? 1 : 0;
        }
        return plain > MOST * texts.size() && (preview.hints().zone() == null || timestamps.zonelessTimes() == 0);
    }

    /** Refuses the letters of an American zone in the other half of the world, where they mean another zone. */
    private static void requireAmerica(LogPreview preview, ColumnPlan.Column time, Set<String> letters) {
        ColumnPlan.Column lon = preview.plan().find(LogQuantity.LON);
        List<String> texts = lon == null ? List.of() : preview.texts(lon.index());
        double lonDeg = texts.isEmpty() ? Double.NaN : NumberParser.parse(texts.get(0), preview.mark());
        for (String zone : letters) {
            if (ZoneLetters.offsetS(zone) < 0 && lonDeg > EAST_OF_AMERICA_DEG) {
                throw preview.found(time, "a time in " + zone + " at longitude " + texts.get(0))
                        .kind(RefusalKind.ZONE)
                        .expected("letters of a zone of that place")
                        .hint(
                                "take the letters out and write log: {zone: Asia/Shanghai} in the rig file, with your zone");
            }
        }
    }

    /** Returns the spreadsheet format of bare numbers, or null if they are none. */
    private static LocalTimestampReader.@Nullable Form serial(
            LogPreview preview, ColumnPlan.Column time, ColumnPlan.@Nullable Column date, List<String> texts) {
        if (!time.unit().isEmpty()) {
            return null;
        }
        List<Double> numbers = texts.stream()
                .map(text -> NumberParser.parse(text, preview.mark()))
                .filter(number -> !Double.isNaN(number))
                .toList();
        if (numbers.size() <= MOST * texts.size()) {
            return null;
        }
        if (date == null && SerialDates.are(numbers)) {
            return LocalTimestampReader.Form.SERIAL;
        }
        return date != null && SerialDates.areFractions(numbers) ? LocalTimestampReader.Form.FRACTION_OF_DAY : null;
    }

    /** Returns the format of the times of day, or null if they are not times of day. */
    private static LocalTimestampReader.@Nullable Form form(
            LogPreview preview, ColumnPlan.Column time, ColumnPlan.@Nullable Column date, List<String> texts) {
        TimeOfDay reader = new TimeOfDay();
        Set<String> letters = new LinkedHashSet<>();
        int clock = 0;
        int together = 0;
        boolean padded = false;
        for (String text : texts) {
            int split = LocalTimestampReader.split(text);
            clock +=
                    reader.read(text.substring(split).strip()) || !Double.isNaN(new IsoTimestamps().read(text)) ? 1 : 0;
            letters.add(reader.letters());
            if (reader.readRunTogether(text)) {
                together++;
                boolean sixDigits = text.length() == 6 || (text.length() > 6 && !Character.isDigit(text.charAt(6)));
                padded |= sixDigits && (text.charAt(0) == '0' || NumberParser.parse(text, preview.mark()) > DAY_S);
            }
        }
        requireAmerica(preview, time, letters);
        if (clock > MOST * texts.size()) {
            return LocalTimestampReader.Form.CLOCK;
        }
        if (together <= MOST * texts.size() || (date == null && preview.hints().date() == null)) {
            return null;
        }
        if (!padded) {
            throw ambiguousRunTogether(preview, time, texts.get(0));
        }
        return LocalTimestampReader.Form.HHMMSS;
    }

    private static UnusableInputException ambiguousRunTogether(
            LogPreview preview, ColumnPlan.Column time, String text) {
        TimeOfDay reader = new TimeOfDay();
        reader.readRunTogether(text);
        return preview.found(
                        time,
                        "\"" + text + "\", which is " + clock(reader.secondS())
                                + " as hhmmss and " + clock(NumberParser.parse(text, preview.mark()))
                                + " as seconds since midnight")
                .expected("an unambiguous time")
                .hint("write columns: {\"time[hhmmss]\": \"" + time.header() + "\"} in the rig file for the first, "
                        + "columns: {\"time[s]\": \"" + time.header() + "\"} for the second");
    }

    private static String clock(double secondS) {
        return java.time.LocalTime.MIDNIGHT
                .plusSeconds((long) Math.floor(secondS))
                .format(java.time.format.DateTimeFormatter.ISO_LOCAL_TIME);
    }

    private static LocalTimestampReader dated(
            LogPreview preview,
            ColumnPlan.Column time,
            ColumnPlan.@Nullable Column date,
            LocalTimestampReader.Form form) {
        List<String> dates = new ArrayList<>();
        boolean inTime = false;
        if (date != null) {
            dates.addAll(preview.texts(date.index()));
        } else if (form == LocalTimestampReader.Form.CLOCK) {
            for (String text : preview.texts(time.index())) {
                int split = LocalTimestampReader.split(text);
                inTime |= split > 0;
                if (split > 0) {
                    dates.add(text.substring(0, split).strip());
                }
            }
            inTime |= preview.texts(time.index()).stream().noneMatch(text -> text.indexOf(':') >= 0);
        }
        boolean whole = form == LocalTimestampReader.Form.SERIAL;
        if (date == null && !inTime && !whole && preview.hints().date() == null) {
            String text = preview.texts(time.index()).get(0);
            List<String> alternatives = preview.plan().ambiguousDates();
            if (!alternatives.isEmpty()) {
                throw preview.found(
                                time,
                                "the time of day \"" + text + "\" beside two dates, "
                                        + String.join(" and ", alternatives))
                        .expected("one date that goes with it")
                        .hint("write columns: {date: \"" + alternatives.get(0) + "\"} or columns: {date: \""
                                + alternatives.get(1) + "\"} in the rig file");
            }
            throw preview.found(time, "the time of day \"" + text + "\" without a date")
                    .kind(RefusalKind.DATE)
                    .expected("a date with the time, in the same column or in one named date")
                    .hint(
                            "write log: {date: 2026-05-14} in the rig file, with the day on which the log starts; a log of "
                                    + "several days needs the date in each line: export it with one");
        }
        if (whole) {
            List<DateOrder> any = List.of(DateOrder.YEAR_MONTH_DAY);
            return new LocalTimestampReader(preview, time, date, any, form);
        }
        ColumnPlan.Column asked = date == null ? time : date;
        DateOrder order = order(preview, asked, dates);
        return new LocalTimestampReader(preview, time, date, equivalentOrders(preview, asked, dates, order), form);
    }

    /** Returns the order and all others that give the same dates so far: 05/05 does not decide, 06/05 below it does. */
    private static List<DateOrder> equivalentOrders(
            LogPreview preview, ColumnPlan.Column column, List<String> texts, DateOrder order) {
        List<DateOrder> orders = new ArrayList<>(List.of(order));
        boolean given = preview.hints().dateOrder() != null || !column.unit().isEmpty();
        for (DateOrder other : given ? new DateOrder[0] : DateOrder.values()) {
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

    /** Returns the only order that parses the texts; throws if several do. */
    static DateOrder order(LogPreview preview, ColumnPlan.Column column, List<String> texts) {
        for (DateOrder order : DateOrder.values()) {
            if (column.unit().equals(order.word())) {
                return order;
            }
        }
        DateOrder given = preview.hints().dateOrder();
        if (given != null) {
            return given;
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
            // Up to a tenth may be damaged.
            if (unread * 10 <= texts.size() && !dates.isEmpty()) {
                readings.putIfAbsent(dates, order);
            }
        }
        if (readings.size() > 1) {
            throw ambiguousOrder(preview, column, texts.get(0), readings);
        }
        return readings.isEmpty()
                ? DateOrder.YEAR_MONTH_DAY
                : readings.values().iterator().next();
    }

    private static UnusableInputException ambiguousOrder(
            LogPreview preview, ColumnPlan.Column column, String text, Map<List<LocalDate>, DateOrder> readings) {
        List<String> is = new ArrayList<>();
        List<String> write = new ArrayList<>();
        readings.forEach((dates, order) -> {
            is.add(dates.get(0) + " read as " + order.word());
            write.add("log: {date_order: " + order.word() + "}");
        });
        return preview.found(column, "the date \"" + text + "\", which is " + String.join(" and ", is))
                .kind(RefusalKind.DATE_ORDER)
                .expected("an unambiguous date such as 2026-05-14")
                .hint("write " + String.join(" or ", write) + " in the rig file");
    }
}
