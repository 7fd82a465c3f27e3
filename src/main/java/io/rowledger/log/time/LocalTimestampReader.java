package io.rowledger.log.time;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogHints.DateOrder;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.source.NumberParser;
import io.rowledger.text.Message;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads dates and times of day in one column or two, or times of day from a given date on. A time of day that falls by
 * more than half a day under the same date has passed midnight.
 */
final class LocalTimestampReader implements TimestampReader {
    private static final Pattern YEAR_FIRST = Pattern.compile("\\d{4}\\D");

    private static final double DAY_S = 86_400;
    private static final double HOUR_S = 3600;
    private static final Set<String> UNIVERSAL = Set.of("UTC", "GMT");

    /** Format of the time of day. */
    enum Form {
        CLOCK,
        HHMMSS,
        /** Seconds since midnight, after the column's factor. */
        SECONDS_OF_DAY,
        /** A fraction of a day. */
        FRACTION_OF_DAY,
        /** A spreadsheet's day number with the time of day as its fraction. */
        SERIAL
    }

    private final ColumnPlan.Column time;
    private final int dateIndex;
    /** Index of the column with AM or PM; -1 if there is none. */
    private final int halfIndex;
    /** Date orders that agree on every date so far; the first one is used. */
    private List<DateOrder> orders;

    private final String file;
    private final String dateHeader;
    private final Form form;
    private final char mark;
    private final @Nullable LocalDate fixed;
    private final @Nullable ZoneTime zone;
    private final IsoTimestamps iso = new IsoTimestamps();
    private final TimeOfDay timeOfDay = new TimeOfDay();
    private String lastDay = "";
    private double lastDayS = Double.NaN;
    private double lastTimeS = Double.NaN;
    private int daysPassed;
    private int midnights;
    /** True if every date begins with a year of four digits, which leaves no order open. */
    private final boolean yearFirst;

    private int zonelessTimes;
    private int inZone;
    private final Set<String> letters = new LinkedHashSet<>();
    private String lastLetters = "";

    LocalTimestampReader(
            LogPreview preview,
            ColumnPlan.Column time,
            ColumnPlan.@Nullable Column date,
            List<DateOrder> orders,
            Form form) {
        this.time = time;
        this.dateIndex = date == null ? -1 : date.index();
        ColumnPlan.Column half = preview.plan().find(LogQuantity.HALF_DAY);
        this.halfIndex = half == null ? -1 : half.index();
        this.orders = List.copyOf(orders);
        this.file = preview.file();
        this.dateHeader = (date == null ? time : date).header();
        this.form = form;
        this.mark = preview.mark();
        this.fixed = date == null ? preview.hints().date() : null;
        this.yearFirst = preview.texts(dateIndex >= 0 ? dateIndex : time.index()).stream()
                .allMatch(text -> YEAR_FIRST.matcher(text).lookingAt());
        ZoneId local = preview.hints().zone();
        this.zone = local == null ? null : new ZoneTime(local, preview.file(), time.header());
    }

    @Override
    public double read(String[] fields, int line) {
        String text = fields[time.index()].strip();
        if (form == Form.SERIAL) {
            secondsOffset = Double.NaN;
            double localS = SerialDates.localS(NumberParser.parse(text, mark));
            return Double.isNaN(localS) ? localS : utcS(localS, line);
        }
        String day = dateIndex >= 0 ? fields[dateIndex].strip() : "";
        String clock = text;
        int split = form == Form.CLOCK ? split(text) : 0;
        if (split > 0) {
            clock = text.substring(split).strip();
            day = dateIndex >= 0 ? day : text.substring(0, split).strip();
        } else if (form == Form.CLOCK && dateIndex < 0 && text.indexOf(':') < 0) {
            return isoS(text, line);
        }
        if (!readTime(halfIndex < 0 ? clock : withHalf(clock, fields[halfIndex].strip()))) {
            return Double.NaN;
        }
        double dayS = dayS(day, line);
        double localS = dayS + timeOfDay(day);
        return Double.isNaN(localS) ? localS : utcS(localS, line);
    }

    /** Returns the time of day with AM or PM of its own column; as it is where it has them, or is one of 24 hours. */
    private String withHalf(String clock, String half) {
        boolean plain = timeOfDay.read(clock);
        boolean twelve = plain && timeOfDay.secondS() >= HOUR_S && timeOfDay.secondS() < 13 * HOUR_S;
        return twelve && timeOfDay.read(clock + " " + half) ? clock + " " + half : clock;
    }

    /** Reads a time without a colon: basic ISO 8601. */
    private double isoS(String text, int line) {
        int before = iso.zonelessTimes();
        double s = iso.read(text);
        if (Double.isNaN(s) || iso.zonelessTimes() == before) {
            return s;
        }
        secondsOffset = Double.NaN;
        return utcS(s, line);
    }

    private double secondS;
    private double secondsOffset;

    private boolean readTime(String clock) {
        if (form == Form.SECONDS_OF_DAY) {
            secondS = NumberParser.parse(clock, mark) * time.toSi();
            secondsOffset = Double.NaN;
            return secondS >= 0 && secondS <= DAY_S;
        }
        if (form == Form.FRACTION_OF_DAY) {
            secondS = Math.rint(NumberParser.parse(clock, mark) * DAY_S * 1000) / 1000;
            secondsOffset = Double.NaN;
            return secondS >= 0 && secondS <= DAY_S;
        }
        boolean read = form == Form.HHMMSS ? timeOfDay.readRunTogether(clock) : timeOfDay.read(clock);
        secondS = timeOfDay.secondS();
        secondsOffset = timeOfDay.offsetS();
        return read;
    }

    private double utcS(double localS, int line) {
        if (!Double.isNaN(secondsOffset)) {
            noteLetters();
            return localS - secondsOffset;
        }
        if (zone == null) {
            zonelessTimes++;
            return localS;
        }
        inZone++;
        return zone.utcS(localS, line);
    }

    private void noteLetters() {
        String written = timeOfDay.letters();
        if (!written.equals(lastLetters) && !written.isEmpty() && !UNIVERSAL.contains(written)) {
            lastLetters = written;
            letters.add(written);
        }
    }

    private double dayS(String day, int line) {
        if (fixed != null && day.isEmpty()) {
            return fixed.toEpochDay() * DAY_S;
        }
        if (!day.equals(lastDay)) {
            LocalDate date = date(day, line);
            lastDay = day;
            lastDayS = date == null ? Double.NaN : date.toEpochDay() * DAY_S;
            daysPassed = 0;
            lastTimeS = Double.NaN;
        }
        return lastDayS;
    }

    /** Parses a date in every order still possible; throws at the first date on which two orders differ. */
    private @Nullable LocalDate date(String day, int line) {
        List<DateOrder> left = new ArrayList<>();
        List<LocalDate> dates = new ArrayList<>();
        for (DateOrder order : orders) {
            LocalDate date = DateFormats.read(day, order);
            if (date != null) {
                left.add(order);
                dates.add(date);
            }
        }
        if (left.isEmpty()) {
            return null;
        }
        for (int i = 1; i < left.size(); i++) {
            if (!dates.get(i).equals(dates.get(0))) {
                throw ask(day, line, left, dates, i);
            }
        }
        orders = left;
        return dates.get(0);
    }

    private UnusableInputException ask(String day, int line, List<DateOrder> left, List<LocalDate> dates, int other) {
        return UnusableInputException.found("the date \"" + day + "\", which is " + dates.get(0) + " read as "
                        + left.get(0).word() + " and " + dates.get(other) + " read as "
                        + left.get(other).word() + "; the dates before it are the same both ways")
                .kind(RefusalKind.DATE_ORDER)
                .inFile(file)
                .atLine(line)
                .atColumn(dateHeader)
                .expected("an unambiguous date such as 2026-05-14")
                .hint("write log: {date_order: " + left.get(0).word() + "} or log: {date_order: "
                        + left.get(other).word() + "} in the rig file");
    }

    /** Returns seconds since the midnight at which the written date begins; beyond a day after midnight passed. */
    private double timeOfDay(String day) {
        boolean dayInText = dateIndex < 0 && !day.isEmpty();
        if (dayInText) {
            return secondS;
        }
        if (secondS < lastTimeS - DAY_S / 2) {
            daysPassed++;
            midnights++;
        } else if (daysPassed > 0 && secondS > lastTimeS + DAY_S / 2) {
            // A record from before midnight that follows one from after it.
            return secondS + (daysPassed - 1) * DAY_S;
        }
        lastTimeS = secondS;
        return secondS + daysPassed * DAY_S;
    }

    /** Returns the index of the time of day in a text with a date; 0 if there is no date. */
    static int split(String text) {
        int colon = text.indexOf(':');
        int at = colon;
        while (at > 0 && text.charAt(at - 1) >= '0' && text.charAt(at - 1) <= '9') {
            at--;
        }
        return at > 0 && colon - at <= 2 ? at : 0;
    }

    @Override
    public int zonelessTimes() {
        return zonelessTimes;
    }

    @Override
    public List<LogQuantity> helpers() {
        List<LogQuantity> helpers = new ArrayList<>();
        if (dateIndex >= 0) {
            helpers.add(LogQuantity.DATE);
        }
        if (halfIndex >= 0) {
            helpers.add(LogQuantity.HALF_DAY);
        }
        return helpers;
    }

    @Override
    public List<Message> remarks() {
        List<Message> parts = new ArrayList<>();
        if (dateIndex >= 0) {
            parts.add(Message.of("notes.column.dateApart"));
        } else if (fixed != null) {
            parts.add(Message.of("notes.column.dateGiven", fixed.toString()));
        }
        if (dateIndex >= 0 || (fixed == null && form == Form.CLOCK)) {
            DateOrder order = yearFirst ? DateOrder.YEAR_MONTH_DAY : orders.get(0);
            parts.add(Message.of("notes.column.order." + order.name()));
        }
        if (form == Form.HHMMSS) {
            parts.add(Message.of("notes.column.hhmmss"));
        } else if (form == Form.SERIAL) {
            parts.add(Message.of("notes.column.serial"));
        } else if (form == Form.FRACTION_OF_DAY) {
            parts.add(Message.of("notes.column.fraction"));
        }
        if (!letters.isEmpty()) {
            parts.add(Message.of("notes.column.letters", String.join(", ", letters)));
        }
        if (zone != null && inZone > 0) {
            parts.add(Message.of("notes.column.local", zone.zone().getId()));
        }
        return parts;
    }

    @Override
    public List<Message> notes() {
        List<Message> notes = new ArrayList<>();
        if (zone != null && inZone > 0) {
            notes.add(Message.of("notes.log.zone", zone.zone().getId()));
        }
        if (zone != null && zone.twice() > 0) {
            notes.add(Message.of("notes.log.repeatedHour", zone.twice()));
        }
        for (String zoneLetters : letters) {
            double hours = ZoneLetters.offsetS(zoneLetters) / 3600;
            if (zoneLetters.contains("+") || zoneLetters.contains("-")) {
                // It says its distance from UTC itself.
                continue;
            }
            notes.add(Message.of(
                    "notes.log.zoneLetters", zoneLetters, (hours < 0 ? "-" : "+") + Math.round(Math.abs(hours))));
        }
        if (midnights > 0) {
            notes.add(Message.of("notes.log.midnight"));
        }
        return notes;
    }
}
