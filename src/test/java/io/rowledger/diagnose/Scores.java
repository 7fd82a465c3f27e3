package io.rowledger.diagnose;

import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** Counts what was found of what was put in. */
final class Scores {
    private static final double ONSET_S = 10;

    private final Map<FindingKind, int[]> byKind = new EnumMap<>(FindingKind.class);

    private final Map<FindingKind, Map<String, Integer>> confusion = new EnumMap<>(FindingKind.class);
    private final List<Double> onsetErrors = new ArrayList<>();
    private final int[][] reliability = new int[10][2];
    private final double[] stated = new double[10];
    private final List<String> misses = new ArrayList<>();
    private final List<Told> told = new ArrayList<>();
    private final List<String> hidden = new ArrayList<>();
    private final List<String> brief = new ArrayList<>();
    private int rowsRight;
    private int rowsNamed;
    private int cleanLogs;
    private int cleanLogsWithRowFinding;
    private int cleanLogsAccused;
    private int falseFindings;
    private int logs;

    void add(String name, RandomJob.Drawn job, Diagnosis diagnosis) {
        add(name, job.unseen(), job.expected(), diagnosis.findings(), job.rows());
        if (diagnosis.allClear()) {
            job.off().forEach(row -> hidden.add(name + ": " + (row == 0 ? "bar" : "row " + row)));
        }
    }

    void add(
            String name,
            List<RandomJob.Expected> unseen,
            List<RandomJob.Expected> expected,
            List<Finding> found,
            int rows) {
        logs++;
        List<Finding> rest = new ArrayList<>(found);
        for (RandomJob.Expected e : unseen) {
            rest.remove(best(e, rest, rows));
        }
        List<RandomJob.Expected> skips = new ArrayList<>();
        for (RandomJob.Expected e : expected) {
            int[] counts = byKind.computeIfAbsent(e.kind(), k -> new int[2]);
            counts[0]++;
            Finding match = best(e, rest, rows);
            if (match == null) {
                skips.add(e);
            } else {
                counts[1]++;
                rest.remove(match);
                matched(name, e, match, rows);
            }
        }
        // Only what is no other fault's own finding can have been taken for this one.
        for (RandomJob.Expected e : skips) {
            String as = "nothing";
            for (Finding other : rest) {
                as = overlaps(other, e, rows) ? other.kind().jsonName() : as;
            }
            misses.add(name + ": " + e + " seen as " + as);
            brief.add(name + ": " + e.kind().jsonName() + e.rows() + " seen as " + as);
            confusion.computeIfAbsent(e.kind(), k -> new TreeMap<>()).merge(as, 1, Integer::sum);
        }
        for (Finding wrong : rest) {
            falseFindings++;
            tally(wrong, false);
            brief.add(String.format(
                    Locale.ROOT,
                    "%s: false %s%s %.2f",
                    name,
                    wrong.kind().jsonName(),
                    wrong.rows(),
                    wrong.confidence()));
            misses.add(name + ": false " + wrong.kind() + wrong.rows() + " "
                    + String.format(Locale.ROOT, "%.2f", wrong.confidence()) + " " + FaultField.text(wrong.evidence())
                    + " in " + expected);
        }
        boolean nothingWrong = expected.stream()
                .allMatch(e ->
                        e.kind() == FindingKind.NO_TURN_COMPENSATION && e.rows().isEmpty());
        if (nothingWrong && unseen.stream().allMatch(e -> e.kind() == FindingKind.NO_TURN_COMPENSATION)) {
            cleanLogs++;
            cleanLogsWithRowFinding += rest.stream().anyMatch(f -> !f.rows().isEmpty()) ? 1 : 0;
            cleanLogsAccused += rest.isEmpty() ? 0 : 1;
        }
    }

    private void matched(String name, RandomJob.Expected e, Finding match, int rows) {
        confusion
                .computeIfAbsent(e.kind(), k -> new TreeMap<>())
                .merge(match.kind().jsonName(), 1, Integer::sum);
        tally(match, true);
        rowsNamed++;
        boolean named = named(match, rows).equals(wanted(e, rows));
        rowsRight += named ? 1 : 0;
        if (!named) {
            misses.add(name + ": " + e + " named " + match.rows());
        }
        if (e.step()) {
            double off = match.fromS() - e.onsetS();
            onsetErrors.add(Math.abs(off));
            if (Math.abs(off) > ONSET_S) {
                misses.add(name + ": " + e + " onset off by " + off);
            }
        }
    }

    /** What was stated, and whether it was right. */
    record Told(Finding finding, boolean right) {}

    /** All findings that were counted. */
    List<Told> told() {
        return told;
    }

    private void tally(Finding f, boolean right) {
        told.add(new Told(f, right));
        int bin = Math.min(9, (int) (f.confidence() * 10));
        reliability[bin][0]++;
        reliability[bin][1] += right ? 1 : 0;
        stated[bin] += f.confidence();
    }

    private static List<Integer> all(int rows) {
        return IntStream.rangeClosed(1, rows).boxed().toList();
    }

    private static List<Integer> named(Finding f, int rows) {
        return f.rows().isEmpty() ? all(rows) : f.rows();
    }

    private static List<Integer> wanted(RandomJob.Expected e, int rows) {
        return e.kind() == FindingKind.OUTSIDE_SHARE
                ? List.of(1, rows)
                : e.rows().isEmpty() ? all(rows) : e.rows();
    }

    private static boolean overlaps(Finding f, RandomJob.Expected e, int rows) {
        return named(f, rows).stream().anyMatch(wanted(e, rows)::contains);
    }

    private static Finding best(RandomJob.Expected e, List<Finding> found, int rows) {
        Finding best = null;
        for (Finding f : found) {
            if (f.kind() == e.kind()
                    && overlaps(f, e, rows)
                    && (best == null || named(f, rows).equals(wanted(e, rows)))) {
                best = f;
            }
        }
        return best;
    }

    /** What the project promises and this run does not hold: recall by kind, rows, onsets, healthy rows left alone. */
    List<String> brokenPromises() {
        List<String> broken = new ArrayList<>();
        for (FindingKind kind : byKind.keySet()) {
            boolean grave = List.of(
                            FindingKind.PLUGGED, FindingKind.LEAKING, FindingKind.METER_STUCK, FindingKind.RAN_EMPTY)
                    .contains(kind);
            if (recall(kind) < (grave ? 0.95 : 0.90)) {
                broken.add("recall of " + kind.jsonName() + " " + recall(kind));
            }
        }
        if (rowsRight < 0.99 * rowsNamed) {
            broken.add("rows named right " + rowsRight + " of " + rowsNamed);
        }
        long late = onsetErrors.stream().filter(x -> x > ONSET_S).count();
        if (late > 0.05 * onsetErrors.size()) {
            broken.add("onsets beyond 10 s: " + late + " of " + onsetErrors.size());
        }
        if (50 * cleanLogsWithRowFinding > cleanLogs) {
            broken.add("clean logs with a false row finding: " + cleanLogsWithRowFinding + " of " + cleanLogs);
        }
        hidden.forEach(what -> broken.add("8 % or more off under nothing found, " + what));
        return broken;
    }

    double recall(FindingKind kind) {
        int[] counts = byKind.getOrDefault(kind, new int[] {0, 0});
        return counts[0] == 0 ? 1 : (double) counts[1] / counts[0];
    }

    int skips() {
        return byKind.values().stream().mapToInt(c -> c[0] - c[1]).sum();
    }

    int put() {
        return byKind.values().stream().mapToInt(c -> c[0]).sum();
    }

    int falseFindings() {
        return falseFindings;
    }

    int cleanLogsWithRowFinding() {
        return cleanLogsWithRowFinding;
    }

    List<String> misses() {
        return misses;
    }

    /** Every miss and false finding in a few words, and what was off under "nothing found". */
    List<String> brief() {
        List<String> all = new ArrayList<>(brief);
        hidden.forEach(what -> all.add("off and hidden: " + what));
        return all;
    }

    /** What a form of log must hold by itself: healthy rows left alone, and what is said surely is right. */
    List<String> brokenInForm() {
        List<String> broken = new ArrayList<>();
        if (50 * cleanLogsAccused > cleanLogs) {
            broken.add("clean logs with a false finding: " + cleanLogsAccused + " of " + cleanLogs);
        }
        if (sure()[1] < 0.9 * sure()[0]) {
            broken.add("right of what was stated with 0.9 or more: " + sure()[1] + " of " + sure()[0]);
        }
        return broken;
    }

    /** Findings stated with 0.9 or more, and how many of them are right. */
    private int[] sure() {
        return reliability[9];
    }

    static String rowHeader() {
        return String.format(
                Locale.ROOT,
                "%-20s %5s %6s %7s %15s %15s %11s",
                "form",
                "put",
                "found",
                "recall",
                "0.9+: right of",
                "clean: accused",
                "off, hidden");
    }

    /** The score of a form in a line. */
    String row(String form) {
        return String.format(
                Locale.ROOT,
                "%-20s %5d %6d %6.1f%% %7d of %4d %7d of %4d %11d",
                form,
                put(),
                put() - skips(),
                100.0 * (put() - skips()) / Math.max(1, put()),
                sure()[1],
                sure()[0],
                cleanLogsAccused,
                cleanLogs,
                hidden.size());
    }

    String table(String title) {
        StringBuilder b = new StringBuilder(title).append('\n');
        b.append(String.format(Locale.ROOT, "%-22s %5s %6s %7s  taken for%n", "kind", "put", "found", "recall"));
        byKind.forEach((kind, c) -> b.append(String.format(
                Locale.ROOT,
                "%-22s %5d %6d %6.1f%%  %s%n",
                kind.jsonName(),
                c[0],
                c[1],
                100.0 * c[1] / c[0],
                confusion.get(kind))));
        List<Double> sorted = onsetErrors.stream().sorted().toList();
        long within = sorted.stream().filter(x -> x <= ONSET_S).count();
        b.append(String.format(
                Locale.ROOT,
                "rows named right %d of %d (%.1f%%)%nonset of steps: within 10 s %d of %d, median %.2f s%n",
                rowsRight,
                rowsNamed,
                100.0 * rowsRight / Math.max(1, rowsNamed),
                within,
                sorted.size(),
                sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() / 2)));
        b.append(String.format(
                Locale.ROOT,
                "clean logs with a false row finding: %d of %d; false findings in all %d logs: %d%n",
                cleanLogsWithRowFinding,
                cleanLogs,
                logs,
                falseFindings));
        b.append("stated        findings  right\n");
        for (int i = 0; i < 10; i++) {
            if (reliability[i][0] > 0) {
                b.append(String.format(
                        Locale.ROOT,
                        "%.2f (mean %.2f) %4d  %.2f%n",
                        i / 10.0,
                        stated[i] / reliability[i][0],
                        reliability[i][0],
                        (double) reliability[i][1] / reliability[i][0]));
            }
        }
        return b.toString();
    }
}
