package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Times of a twelve-hour clock without AM and PM: at one o'clock they fall back by twelve hours. */
final class TwelveHours {
    private static final double TWELVE_HOURS_S = 43_200;
    /** Longest time between the last record of one half day and the first of the next, s. */
    private static final double MAX_SILENT_S = 600;

    private static final int MAX_HOUR = 12;
    private static final Pattern HOUR = Pattern.compile("(\\d{1,2}):\\d{2}");
    private static final Pattern MARKED = Pattern.compile("(?i).*\\d\\s*[ap]\\.?m\\.?.*");

    private TwelveHours() {}

    /** Refuses a log whose hours are 1 to 12 and fall back by twelve hours from one record to the next. */
    static void refuse(FileLog file) {
        RawLog log = file.log();
        int at = 1;
        while (at < log.records && !isFall(log.timeS[at - 1] - log.timeS[at])) {
            at++;
        }
        if (at >= log.records || !areTwelve(file)) {
            return;
        }
        throw UnusableInputException.found("times that fall back by twelve hours from one record to the next, as from "
                        + "12:59 to 1:00 without AM and PM")
                .inFile(file.name())
                .atLine(log.line[at])
                .atColumn(file.plan().timeColumn().header())
                .expected("hours from 0 to 23, or AM or PM with each")
                .hint("export the log with AM and PM, with hours from 0 to 23, or with ISO 8601 times");
    }

    private static boolean isFall(double fallS) {
        return fallS < TWELVE_HOURS_S && fallS >= TWELVE_HOURS_S - MAX_SILENT_S;
    }

    private static boolean areTwelve(FileLog file) {
        ColumnPlan.Column time = file.plan().find(LogQuantity.TIME);
        if (time == null || file.plan().find(LogQuantity.HALF_DAY) != null) {
            return false;
        }
        List<String> texts = file.preview().texts(time.index());
        return !texts.isEmpty() && texts.stream().allMatch(TwelveHours::isTwelve);
    }

    private static boolean isTwelve(String text) {
        Matcher hour = HOUR.matcher(text);
        if (!hour.find() || MARKED.matcher(text).matches()) {
            return false;
        }
        int hours = Integer.parseInt(hour.group(1));
        return hours >= 1 && hours <= MAX_HOUR;
    }
}
