package io.rowledger.report.season;

import io.rowledger.finding.UnusableInputException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Leaves out results that are of a job the ledger has: a log is one job, however often it was reported. */
final class SeasonOnce {
    /** Two runs over one log with the same settings agree to the last digit; a digit of slack for versions. */
    private static final double SAME = 1e-4;

    private final List<SeasonJob> kept = new ArrayList<>();
    private final List<String> notes;

    private SeasonOnce(List<String> notes) {
        this.notes = notes;
    }

    /** The jobs to count, in the order given. */
    static List<SeasonJob> of(List<SeasonJob> jobs, List<String> notes) {
        SeasonOnce once = new SeasonOnce(notes);
        jobs.forEach(once::add);
        return once.kept;
    }

    private void add(SeasonJob job) {
        Set<String> logs = Set.copyOf(job.digests());
        for (int i = 0; i < kept.size(); i++) {
            SeasonJob other = kept.get(i);
            Set<String> others = Set.copyOf(other.digests());
            if (others.containsAll(logs)) {
                notes.add(said(job, other, others.size() > logs.size()));
                return;
            }
            if (logs.containsAll(others)) {
                notes.add(said(other, job, true));
                kept.remove(i);
                add(job);
                return;
            }
            Set<String> common = new HashSet<>(logs);
            common.retainAll(others);
            if (!common.isEmpty()) {
                throw UnusableInputException.found(
                                "a log that " + other.folder() + " was made from too, beside logs that " + "it was not")
                        .inFile(job.folder())
                        .expected("each log in one job only")
                        .hint("run report on all logs of the field as one job, and name that folder alone");
            }
        }
        kept.add(job);
    }

    private static String said(SeasonJob left, SeasonJob counted, boolean part) {
        if (left.folder().equals(counted.folder())) {
            return left.folder() + " was named twice and is counted once.";
        }
        String text = left.folder() + " is of " + (part ? "a part of the logs" : "the same logs") + " of "
                + counted.folder() + " and is counted once, as in " + counted.folder() + ".";
        boolean same = near(left.coveredM2(), counted.coveredM2()) && near(left.nitrogenKg(), counted.nitrogenKg());
        return part || same
                ? text
                : text
                        + " Their figures differ: one of the two was made with another rig file or boundary. Name only the"
                        + " folder that holds.";
    }

    private static boolean near(double a, double b) {
        return Double.isNaN(a) ? Double.isNaN(b) : Math.abs(a - b) <= SAME * Math.abs(a);
    }
}
