package io.rowledger.analysis;

import io.rowledger.coverage.AppliedArea;
import io.rowledger.coverage.Coverage;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.finding.Finding;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.Rates;
import io.rowledger.rig.Rig;
import io.rowledger.setback.Setbacks;
import io.rowledger.strip.Strips;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.whatif.WhatIf;
import io.rowledger.zones.Zones;
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
 * @param intervals how sure areas, volumes, rates and nitrogen are
 * @param setup the setup held against the log
 * @param notes what was assumed or should be known before trusting the figures
 * @param setbacks what was applied within setbacks; null where no keep-out file was given
 * @param zones the prescription against what was done, or null without one
 * @param setups the files handed in beside the logs
 * @param areas ground with one rate each, where the log is a map of areas; empty for all other logs
 * @param whatIf the same drive with other machinery or another speed
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
        Intervals intervals,
        SetupReview setup,
        List<Message> notes,
        @Nullable Setbacks setbacks,
        @Nullable Zones zones,
        List<InputFile> setups,
        List<AppliedArea> areas,
        WhatIf whatIf) {
    /** Copies the lists. */
    public Analysis {
        areas = List.copyOf(areas);
        notes = List.copyOf(notes);
        setups = List.copyOf(setups);
    }

    /** An analysis of logs and rig alone, without a look at the setup. */
    public Analysis(
            Rig rig,
            LogTable log,
            Track track,
            Strips strips,
            Delivery delivery,
            Rates rates,
            Coverage coverage,
            Diagnosis diagnosis,
            Intervals intervals,
            List<Message> notes) {
        this(
                rig,
                log,
                track,
                strips,
                delivery,
                rates,
                coverage,
                diagnosis,
                intervals,
                SetupReview.none(),
                notes,
                null,
                null,
                List.of(),
                List.of(),
                WhatIf.NOTHING);
    }

    /** The same with the setup corrected by what the log says. */
    public Analysis with(CorrectedRun run) {
        SetupReview with = new SetupReview(setup.check(), setup.correction(), run);
        return new Analysis(
                rig, log, track, strips, delivery, rates, coverage, diagnosis, intervals, with, notes, setbacks, zones,
                setups, areas, whatIf);
    }

    /** What is probably wrong, most certain first. */
    public List<Finding> findings() {
        return diagnosis.findings();
    }
}
