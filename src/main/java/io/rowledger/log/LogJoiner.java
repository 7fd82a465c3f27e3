package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.clean.DuplicateLogs;
import io.rowledger.log.clean.PositionOutliers;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.source.LogSource;
import io.rowledger.log.taskdata.ControllerTotals;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Joins the logs of one job by time. A time that two files cover counts once: the file that starts first keeps it, and
 * the records of the other file are duplicates.
 */
final class LogJoiner {
    /** Longest step between two records of a file that still covers the time between them, s. */
    private static final double MAX_COVERED_STEP_S = 5;
    /** Longest step from the last record of a file to the first of the next without a break, in record intervals. */
    private static final double MAX_SEAM_INTERVALS = 2;
    /** Largest distance between two logs of one machine at one time, m: the length of a tractor plus position error. */
    private static final double MAX_APART_M = 15;

    /** Break between two logs without times, s: longer than any that is bridged. */
    private static final double UNTIMED_BREAK_S = 3600;

    private LogJoiner() {}

    /**
     * Joins files.
     *
     * @param totals the controller's own totals; their disagreements are told by the table
     */
    static LogTable join(List<FileLog> files, List<Message> notes, List<ControllerTotals> totals) {
        sameColumns(files);
        if (files.size() == 1) {
            FileLog file = files.get(0);
            return new LogTable(columns(files, null, null, totals), List.of(file.source()));
        }
        chainUntimed(files);
        DuplicateLogs.refuse(files);
        Integer[] order = new Integer[files.size()];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> files.get(i).log().timeS[0]));
        int[] fileOf = {};
        int[] recordOf = {};
        for (int f : order) {
            int[][] both = merge(files, fileOf, recordOf, f, notes);
            fileOf = both[0];
            recordOf = both[1];
        }
        markBreaks(files, fileOf, recordOf);
        int[] used = new int[files.size()];
        for (int f : fileOf) {
            used[f]++;
        }
        List<LogSource> sources = new ArrayList<>();
        for (int f = 0; f < files.size(); f++) {
            LogSource source = files.get(f).source();
            sources.add(new LogSource(
                    source.file(), source.sha256(), source.records(), used[f], source.dropped(), source.repeated()));
        }
        return new LogTable(columns(files, fileOf, recordOf, totals), sources);
    }

    /** Puts logs without times one behind the other, in the order of the call. */
    private static void chainUntimed(List<FileLog> files) {
        List<FileLog> untimed =
                files.stream().filter(file -> file.plan().isUntimed()).toList();
        if (untimed.isEmpty()) {
            return;
        }
        if (untimed.size() < files.size()) {
            throw UnusableInputException.found("points without times beside a log with times")
                    .inFile(untimed.get(0).name())
                    .expected("logs with times, or points without, in driving order")
                    .hint("run the report for the points on their own, or export them with their times");
        }
        double startS = 0;
        Set<String> digests = new HashSet<>();
        for (FileLog file : files) {
            if (!digests.add(file.source().sha256())) {
                throw UnusableInputException.found("the same points twice")
                        .inFile(file.name())
                        .expected("each file once")
                        .hint("take one of the two out of the call");
            }
            RawLog log = file.log();
            for (int i = 0; i < log.records; i++) {
                log.timeS[i] += startS;
            }
            startS = log.timeS[log.records - 1] + UNTIMED_BREAK_S;
        }
    }

    private static LogColumns columns(
            List<FileLog> files, int @Nullable [] fileOf, int @Nullable [] recordOf, List<ControllerTotals> totals) {
        LogColumns columns = Columns.of(files, fileOf, recordOf);
        columns.offScale = totals.stream().anyMatch(ControllerTotals::offScale);
        columns.contradicted = totals.stream().anyMatch(ControllerTotals::volumesDisagree);
        return columns;
    }

    /** Adds the records of file f that no earlier file covers, in time order. */
    private static int[][] merge(List<FileLog> files, int[] fileOf, int[] recordOf, int f, List<Message> notes) {
        FileLog file = files.get(f);
        int n = file.log().records;
        int[] mergedFile = new int[fileOf.length + n];
        int[] mergedRecord = new int[fileOf.length + n];
        int size = 0;
        int a = 0;
        int covered = 0;
        int apart = 0;
        for (int b = 0; b < n; b++) {
            double timeS = file.log().timeS[b];
            while (a < fileOf.length && time(files, fileOf[a], recordOf[a]) < timeS) {
                mergedFile[size] = fileOf[a];
                mergedRecord[size++] = recordOf[a++];
            }
            if (isCovered(files, fileOf, recordOf, a, timeS)) {
                covered++;
                apart += isApart(files, fileOf, recordOf, a, file.log(), b) ? 1 : 0;
                file.drops().addRepeated(file.log().line[b]);
            } else {
                mergedFile[size] = f;
                mergedRecord[size++] = b;
            }
        }
        for (; a < fileOf.length; a++) {
            mergedFile[size] = fileOf[a];
            mergedRecord[size++] = recordOf[a];
        }
        if (covered > 0) {
            if (2 * apart > covered) {
                throw UnusableInputException.found("positions more than " + (int) MAX_APART_M
                                + " m from those of another log at the same time")
                        .inFile(file.name())
                        .expected("logs of one machine with one clock")
                        .hint(
                                "run the report for each machine on its own; if it is one machine, the clocks of the two logs "
                                        + "differ: give one of them, or correct its times");
            }
            notes.add(Message.of("notes.log.joined", covered, file.shortName()));
        }
        return new int[][] {Arrays.copyOf(mergedFile, size), Arrays.copyOf(mergedRecord, size)};
    }

    private static boolean isCovered(List<FileLog> files, int[] fileOf, int[] recordOf, int next, double timeS) {
        if (next == fileOf.length) {
            return false;
        }
        double nextS = time(files, fileOf[next], recordOf[next]);
        if (nextS == timeS) {
            return true;
        }
        return next > 0
                && fileOf[next] == fileOf[next - 1]
                && nextS - time(files, fileOf[next - 1], recordOf[next - 1]) <= MAX_COVERED_STEP_S;
    }

    private static boolean isApart(List<FileLog> files, int[] fileOf, int[] recordOf, int next, RawLog log, int b) {
        RawLog other = files.get(fileOf[next]).log();
        int i = recordOf[next];
        int h = next > 0 && fileOf[next - 1] == fileOf[next] ? recordOf[next - 1] : i;
        double lengthS = other.timeS[i] - other.timeS[h];
        double share = lengthS > 0 ? (log.timeS[b] - other.timeS[h]) / lengthS : 1;
        double latDeg = other.latDeg[h] + share * (other.latDeg[i] - other.latDeg[h]);
        double lonDeg = other.lonDeg[h] + share * (other.lonDeg[i] - other.lonDeg[h]);
        return PositionOutliers.distanceM(latDeg, lonDeg, log.latDeg[b], log.lonDeg[b]) > MAX_APART_M;
    }

    /** Marks a break where the next file does not continue directly after the one before. */
    private static void markBreaks(List<FileLog> files, int[] fileOf, int[] recordOf) {
        for (int i = 1; i < fileOf.length; i++) {
            if (fileOf[i] == fileOf[i - 1]) {
                continue;
            }
            RawLog before = files.get(fileOf[i - 1]).log();
            RawLog after = files.get(fileOf[i]).log();
            int b = recordOf[i - 1];
            int a = recordOf[i];
            double gapS = after.timeS[a] - before.timeS[b];
            boolean endGap =
                    b == before.records - 1 && files.get(fileOf[i - 1]).reader().gapAtEnd();
            boolean startGap = a == 0 ? files.get(fileOf[i]).reader().gapAtStart() : after.gapBefore[a];
            boolean near =
                    PositionOutliers.distanceM(before.latDeg[b], before.lonDeg[b], after.latDeg[a], after.lonDeg[a])
                            <= PositionOutliers.MAX_SPEED_MPS * gapS + PositionOutliers.noiseM(-1);
            after.downBefore[a] = false;
            after.gapBefore[a] = endGap || startGap || !near || gapS > MAX_SEAM_INTERVALS * before.intervalS();
        }
    }

    private static double time(List<FileLog> files, int file, int record) {
        return files.get(file).log().timeS[record];
    }

    private static void sameColumns(List<FileLog> files) {
        ColumnPlan first = files.get(0).plan();
        for (FileLog file : files) {
            ColumnPlan plan = file.plan();
            if (!plan.rows().meters().equals(first.rows().meters())
                    || plan.outlets() != first.outlets()
                    || !plan.products().equals(first.products())) {
                throw UnusableInputException.found(plan.outlets() + " flow columns where "
                                + files.get(0).name() + " has " + first.outlets())
                        .inFile(file.name())
                        .atLine(plan.headerLine())
                        .expected("logs of one machine, with the same flow columns")
                        .hint("run the report for each machine on its own");
            }
        }
    }
}
