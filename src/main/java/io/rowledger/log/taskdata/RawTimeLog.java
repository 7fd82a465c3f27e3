package io.rowledger.log.taskdata;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * One time log as its files hold it, or several of one task that belong together.
 *
 * @param header the meaning of its records
 * @param log its records
 * @param file its binary file
 */
record RawTimeLog(LogHeader header, TimeLog log, ReadFile file) {
    /** Share of time stamps in common from which two logs are columns of one (1). */
    private static final double MIN_SHARED = 0.9;

    /**
     * Joins logs with the same time stamps. A header holds 255 values, so a terminal spreads those of a wide bar over
     * several time logs.
     */
    static List<RawTimeLog> joined(List<RawTimeLog> logs) {
        List<List<RawTimeLog>> groups = new ArrayList<>();
        for (RawTimeLog log : logs) {
            List<RawTimeLog> group = groups.stream()
                    .filter(some -> some.get(0).hasStampsOf(log) && log.addsTo(some))
                    .findFirst()
                    .orElse(null);
            if (group == null) {
                groups.add(new ArrayList<>(List.of(log)));
            } else {
                group.add(log);
            }
        }
        return groups.stream().map(RawTimeLog::join).toList();
    }

    /** False for the same values under a second name. */
    private boolean addsTo(List<RawTimeLog> group) {
        Set<String> known = new HashSet<>();
        group.forEach(one -> one.header.values().forEach(value -> known.add(value.ddi() + " " + value.element())));
        return header.values().stream()
                .anyMatch(value -> Ddi.isRead(value.ddi()) && !known.contains(value.ddi() + " " + value.element()));
    }

    private boolean hasStampsOf(RawTimeLog other) {
        boolean shorter = log.records < other.log.records;
        return (shorter ? other.log.sharedStamps(log) : log.sharedStamps(other.log)) >= MIN_SHARED;
    }

    /** The values of all of them with the records of the one with the most positions. */
    private static RawTimeLog join(List<RawTimeLog> group) {
        if (group.size() == 1) {
            return group.get(0);
        }
        RawTimeLog base = group.stream()
                .max(Comparator.comparingInt(one -> (one.header.has(LogHeader.NORTH) ? 1 << 24 : 0) + one.log.records))
                .orElseThrow();
        List<RawTimeLog> others = new ArrayList<>(group);
        others.remove(base);
        LogHeader header =
                base.header.with(others.stream().map(RawTimeLog::header).toList());
        TimeLog log = TimeLog.join(
                header, base.log, others.stream().map(RawTimeLog::log).toList());
        return new RawTimeLog(header, log, base.file);
    }
}
