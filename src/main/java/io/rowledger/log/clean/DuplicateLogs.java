package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Detects one log given twice with shifted times, for example in local time and in UTC. Joined by time it would count
 * twice. A receiver never repeats a path to the last digit with the same time steps.
 */
public final class DuplicateLogs {
    /** Positions of each log that are searched for in the others. */
    private static final int ANCHORS = 40;
    /** Fewest matches with the same time shift. */
    private static final int MIN_SAME = 10;
    /** Tolerance of equal time shifts, s; times may be rounded to seconds. */
    private static final double SAME_S = 1;
    /** Smallest shift, s; below it the records are ordinary duplicates. */
    private static final double MIN_SHIFT_S = 2;

    /** A position of a log with its time. */
    private record Anchor(int file, double latDeg, double lonDeg, double timeS) {}

    private final List<FileLog> files;
    private final Map<Integer, List<Anchor>> anchors = new HashMap<>();

    private DuplicateLogs(List<FileLog> files) {
        this.files = files;
    }

    /** Throws if one log is a time-shifted copy of another. */
    public static void refuse(List<FileLog> files) {
        DuplicateLogs copies = new DuplicateLogs(files);
        for (int f = 0; f < files.size(); f++) {
            copies.drop(f);
        }
        for (int f = 0; f < files.size(); f++) {
            copies.look(f);
        }
    }

    private void drop(int f) {
        RawLog log = files.get(f).log();
        for (int k = 0; k < ANCHORS; k++) {
            int i = (int) ((long) log.records * k / ANCHORS);
            boolean moves = i > 0 && (log.latDeg[i] != log.latDeg[i - 1] || log.lonDeg[i] != log.lonDeg[i - 1]);
            if (moves) {
                anchors.computeIfAbsent(key(log.latDeg[i], log.lonDeg[i]), key -> new ArrayList<>(1))
                        .add(new Anchor(f, log.latDeg[i], log.lonDeg[i], log.timeS[i]));
            }
        }
    }

    private void look(int f) {
        RawLog log = files.get(f).log();
        double[][] shiftS = new double[files.size()][ANCHORS];
        int[] found = new int[files.size()];
        for (int i = 0; i < log.records; i++) {
            for (Anchor anchor : anchors.getOrDefault(key(log.latDeg[i], log.lonDeg[i]), List.of())) {
                boolean same = anchor.latDeg == log.latDeg[i] && anchor.lonDeg == log.lonDeg[i];
                if (same && anchor.file != f && found[anchor.file] < ANCHORS) {
                    shiftS[anchor.file][found[anchor.file]++] = log.timeS[i] - anchor.timeS;
                }
            }
        }
        for (int other = 0; other < files.size(); other++) {
            check(f, other, Arrays.copyOf(shiftS[other], found[other]));
        }
    }

    private void check(int f, int other, double[] shiftS) {
        if (shiftS.length < MIN_SAME) {
            return;
        }
        Arrays.sort(shiftS);
        double middleS = shiftS[shiftS.length / 2];
        long same = Arrays.stream(shiftS)
                .filter(each -> Math.abs(each - middleS) <= SAME_S)
                .count();
        if (same < MIN_SAME || 2 * same < shiftS.length || Math.abs(middleS) < MIN_SHIFT_S) {
            return;
        }
        throw UnusableInputException.found(
                        "the positions of " + files.get(other).name() + " again, to the last digit, "
                                + words(Math.abs(middleS)) + (middleS > 0 ? " later" : " earlier"))
                .inFile(files.get(f).name())
                .atLine(files.get(f).plan().headerLine())
                .expected("logs of different work, or parts of one log with the same times")
                .hint("give only one of the two: they are one log with two clocks (such as local time and UTC)");
    }

    private static String words(double seconds) {
        Duration duration = Duration.ofSeconds(Math.round(seconds));
        return duration.toHours() > 0
                ? String.format(Locale.ROOT, "%d h %02d min", duration.toHours(), duration.toMinutesPart())
                : duration.toMinutes() > 0
                        ? String.format(Locale.ROOT, "%d min %02d s", duration.toMinutes(), duration.toSecondsPart())
                        : duration.toSeconds() + " s";
    }

    private static int key(double latDeg, double lonDeg) {
        return 31 * Double.hashCode(latDeg) + Double.hashCode(lonDeg);
    }
}
