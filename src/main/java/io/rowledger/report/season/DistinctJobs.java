package io.rowledger.report.season;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Drops results of logs that another job of the ledger has: a log is one job, however often it was reported. */
final class DistinctJobs {
    /** Largest relative difference of two runs over one log with the same settings; versions may differ in the last digit. */
    private static final double MAX_DIFFERENCE = 1e-4;

    private final List<SeasonJob> kept = new ArrayList<>();
    private final List<Message> notes;

    private DistinctJobs(List<Message> notes) {
        this.notes = notes;
    }

    /** The jobs to count, in the order given. */
    static List<SeasonJob> of(List<SeasonJob> jobs, List<Message> notes) {
        DistinctJobs distinct = new DistinctJobs(notes);
        jobs.forEach(distinct::add);
        return distinct.kept;
    }

    private void add(SeasonJob job) {
        Set<String> logs = Set.copyOf(job.digests());
        for (int i = 0; i < kept.size(); i++) {
            SeasonJob other = kept.get(i);
            Set<String> others = Set.copyOf(other.digests());
            if (others.containsAll(logs)) {
                notes.add(note(job, other, others.size() > logs.size()));
                return;
            }
            if (logs.containsAll(others)) {
                notes.add(note(other, job, true));
                kept.remove(i);
                add(job);
                return;
            }
            Set<String> common = new HashSet<>(logs);
            common.retainAll(others);
            if (!common.isEmpty()) {
                throw UnusableInputException.found("a log that is also in " + other.folder() + ", beside other logs")
                        .inFile(job.folder())
                        .expected("each log in one job only")
                        .hint("run report on all logs of the field as one job, and name that folder alone");
            }
        }
        kept.add(job);
    }

    private static Message note(SeasonJob dropped, SeasonJob counted, boolean part) {
        if (dropped.folder().equals(counted.folder())) {
            return Message.of("season.note.namedTwice", dropped.folder());
        }
        if (part) {
            return Message.of("season.note.partOfLogs", dropped.folder(), counted.folder());
        }
        boolean same =
                near(dropped.coveredM2(), counted.coveredM2()) && near(dropped.nitrogenKg(), counted.nitrogenKg());
        return same
                ? Message.of("season.note.sameLogs", dropped.folder(), counted.folder())
                : Message.of("season.note.sameLogsDiffer", dropped.folder(), counted.folder());
    }

    private static boolean near(double a, double b) {
        return Double.isNaN(a) ? Double.isNaN(b) : Math.abs(a - b) <= MAX_DIFFERENCE * Math.abs(a);
    }
}
