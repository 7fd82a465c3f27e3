package io.rowledger.report;

import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.finding.Finding;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.Rates;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import java.util.List;

/**
 * Everything computed for one job: the one argument of every report and file writer.
 *
 * @param rig the machine
 * @param log the usable records
 * @param track poses and passes
 * @param strips the strips between the poses
 * @param delivery what left each outlet in each step
 * @param rates areas and volumes
 * @param coverage skips, overlaps, received grid
 * @param diagnosis what the rows' flows say about the machine
 * @param setup the setup held against the log
 * @param notes what was assumed or should be known before trusting the figures, one sentence each
 */
public record Analysis(
        Rig rig,
        LogTable log,
        Track track,
        Strips strips,
        Delivery delivery,
        Rates rates,
        Coverage coverage,
        Diagnosis diagnosis,
        SetupReview setup,
        List<String> notes) {
    /** Copies the notes. */
    public Analysis {
        notes = List.copyOf(notes);
    }

    /** Without a look at the setup. */
    public Analysis(
            Rig rig,
            LogTable log,
            Track track,
            Strips strips,
            Delivery delivery,
            Rates rates,
            Coverage coverage,
            Diagnosis diagnosis,
            List<String> notes) {
        this(rig, log, track, strips, delivery, rates, coverage, diagnosis, SetupReview.none(), notes);
    }

    /** The same with the setup corrected by what the log says. */
    public Analysis with(CorrectedRun run) {
        SetupReview with = new SetupReview(setup.check(), setup.correction(), run);
        return new Analysis(rig, log, track, strips, delivery, rates, coverage, diagnosis, with, notes);
    }

    /** What is probably wrong, most certain first. */
    public List<Finding> findings() {
        return diagnosis.findings();
    }
}
