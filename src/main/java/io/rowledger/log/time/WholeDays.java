package io.rowledger.log.time;

import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogHints.DateOrder;
import io.rowledger.log.header.LogPreview;
import io.rowledger.log.header.LogQuantity;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A time column that holds only the day of each record, as maps of applied rates have it: {@code 2026-06-11},
 * {@code 6/11/2026}, or a day with midnight behind it. Such a log is dated, and has no times.
 */
public final class WholeDays {
    /** A midnight that stands for no time at all. */
    private static final Pattern MIDNIGHT =
            Pattern.compile("[T ]\\s*(?:0?0:00(?::00(?:\\.0*)?)?|12:00(?::00)?\\s*AM)\\s*Z?$");

    private static final Pattern DAY = Pattern.compile(
            "\\d{1,4}[-/. ]\\d{1,2}[-/. ]\\d{1,4}|\\d{8}|(?=.*\\p{L}{3})[\\p{L}\\d][\\p{L}\\d ,./-]{4,24}");

    private final int index;
    private final DateOrder order;
    private @Nullable LocalDate first;
    private @Nullable LocalDate last;

    private WholeDays(int index, DateOrder order) {
        this.index = index;
        this.order = order;
    }

    /** Returns true if the log has rates per area only, and days instead of times. */
    public static boolean are(LogPreview preview) {
        ColumnPlan.Column time = preview.plan().find(LogQuantity.TIME);
        boolean rates = preview.plan().columns().stream()
                .filter(column -> column.role().quantity() == LogQuantity.FLOW)
                .allMatch(column -> column.written().isRate());
        if (time == null
                || !rates
                || !Double.isNaN(time.toSi())
                || preview.plan().find(LogQuantity.DATE) != null) {
            return false;
        }
        List<String> texts = preview.texts(time.index());
        return !texts.isEmpty() && texts.stream().allMatch(text -> isDay(day(text)));
    }

    private static boolean isDay(String text) {
        if (!DAY.matcher(text).matches()) {
            return false;
        }
        for (DateOrder order : DateOrder.values()) {
            if (DateFormats.read(text, order) != null) {
                return true;
            }
        }
        return false;
    }

    private static String day(String text) {
        return MIDNIGHT.matcher(text.strip()).replaceFirst("").strip();
    }

    /**
     * Returns the days of a log of which {@link #are} holds.
     *
     * @throws io.rowledger.finding.UnusableInputException if the order of day and month is open
     */
    public static WholeDays of(LogPreview preview, ColumnPlan.Column column) {
        List<String> texts =
                preview.texts(column.index()).stream().map(WholeDays::day).toList();
        return new WholeDays(column.index(), TimestampFormatDetector.order(preview, column, texts));
    }

    /** Takes the day of one record; a blank tells none. Returns false if the field holds something else. */
    public boolean take(String[] fields) {
        String text = day(fields[index]);
        LocalDate day = DateFormats.read(text, order);
        if (day == null) {
            return text.isEmpty();
        }
        first = first == null || day.isBefore(first) ? day : first;
        last = last == null || day.isAfter(last) ? day : last;
        return true;
    }

    /** Returns the index of the column. */
    public int index() {
        return index;
    }

    /** Returns the first and the last day; empty if no record has one. */
    public List<LocalDate> days() {
        return first == null || last == null ? List.of() : List.of(first, last);
    }
}
