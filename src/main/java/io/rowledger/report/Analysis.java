package io.rowledger.report;

import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.setup.SetupCheck;
import io.rowledger.finding.Finding;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.Rates;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import java.util.List;
import org.jspecify.annotations.Nullable;

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
 * @param setup what the log says about the setup
 * @param corrected the ground with the setup corrected by the log, or null where nobody asked or nothing differs
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
        SetupCheck setup,
        @Nullable CorrectedRun corrected,
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
        this(rig, log, track, strips, delivery, rates, coverage, diagnosis, SetupCheck.none(), null, notes);
    }

    /** The same with the setup corrected by what the log says. */
    public Analysis with(CorrectedRun run) {
        return new Analysis(rig, log, track, strips, delivery, rates, coverage, diagnosis, setup, run, notes);
    }

    /** What is probably wrong, most certain first. */
    public List<Finding> findings() {
        return diagnosis.findings();
    }
}
