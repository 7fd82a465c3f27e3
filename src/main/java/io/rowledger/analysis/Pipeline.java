package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.sections.Grouping;
import io.rowledger.diagnose.Diagnoses;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.setup.SetupCheck;
import io.rowledger.diagnose.setup.SetupChecks;
import io.rowledger.diagnose.setup.SetupFindings;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.AreaLog;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogReading;
import io.rowledger.log.LogTable;
import io.rowledger.parallel.Ahead;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigCorrection;
import io.rowledger.rig.RigFile;
import io.rowledger.rig.RigReader;
import io.rowledger.setback.Setbacks;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.IntervalsBuilder;
import io.rowledger.uncertainty.MeterFault;
import io.rowledger.uncertainty.UncertaintyInputs;
import io.rowledger.whatif.WhatIf;
import io.rowledger.zones.Zones;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** The main job: logs and a rig file in, an {@link Analysis} out. */
public final class Pipeline {
    private Pipeline() {}

    /**
     * Analyzes the logs of one field as one job.
     *
     * @param files what the person hands in; only read
     * @param threads threads to use; the result is the same for any number
     * @param progress hears the phases
     * @throws UnusableInputException where a file can't be used
     */
    public static Analysis analyze(JobFiles files, int threads, Progress progress) {
        RigFile rigFile = RigReader.read(files.rig());
        Rig rig = rigFile.rig();
        int logs = files.logs().size();
        progress.begins("reading the log", logs == 1 ? "1 file" : logs + " files");
        if (AreaLog.is(files.logs().get(0))) {
            return AreaJob.analyze(files, rigFile, threads, progress);
        }
        LogReading reading = LogReader.read(files.logs(), rig.logOptions());
        LogTable log = reading.table();
        JobClock.requireAtPlace(rig, log);
        progress.begins("rebuilding the track", log.records() + " records");
        FieldWork work = FieldWork.of(log, rig, files, threads);
        Ahead<Rates> summed = Ahead.of(threads, () -> RatesBuilder.build(work.track(), work.strips(), work.delivery()));
        progress.begins("diagnosing rows", rig.rows() + " rows");
        Diagnosis ofRows = Diagnoses.of(log, rig, work.track(), work.strips(), work.delivery(), threads);
        SetupCheck setup = SetupChecks.of(log, rig, work.track(), ofRows);
        Diagnosis diagnosis = SetupFindings.into(ofRows, setup, rig, work.track(), work.delivery());
        progress.begins("computing coverage", work.track().passes().size() + " passes");
        Coverage coverage = work.coverage(Grouping.candidates(rig.bands()), diagnosis.findings(), threads);
        work.maps().requireInsideBoundary(coverage);
        Setbacks setbacks = work.setbacks(coverage, threads);
        Zones zones = work.zones(coverage);
        work.maps().requireInsideZones(zones == null ? 0 : zones.outsideCoveredM2(), coverage);
        progress.begins("estimating uncertainty", "positions, meters, setup");
        UncertaintyInputs inputs = new UncertaintyInputs(
                log, rig, work.track(), work.strips(), work.delivery(), meterFaults(diagnosis, log), lateS(setup, rig));
        Ahead<WhatIf> whatIf = Ahead.of(threads, () -> WhatIf.of(work.strips(), work.delivery(), coverage, diagnosis));
        Rates rates = summed.get();
        Intervals intervals = IntervalsBuilder.of(inputs, rates, coverage, threads);
        return new Analysis(
                rig,
                log,
                work.track(),
                work.strips(),
                work.delivery(),
                rates,
                coverage,
                diagnosis,
                intervals,
                new SetupReview(setup, RigCorrection.of(files.rig(), setup.changes()), null),
                JobNotes.of(reading, work, coverage, setbacks, zones),
                setbacks,
                zones,
                SetupFiles.of(files, rigFile, reading),
                List.of(),
                whatIf.get());
    }

    /**
     * The same analysis with the ground as it looks by the setup that the log says; unchanged where the log contradicts
     * nothing. The rig file is only read.
     *
     * @param analysis of these files
     */
    public static Analysis withSetupApplied(Analysis analysis, JobFiles files, int threads, Progress progress) {
        RigCorrection.Corrected correction = analysis.setup().correction();
        if (correction.lines().isEmpty()) {
            return analysis;
        }
        progress.begins("computing coverage", "with " + correction.lines().size() + " lines of the rig file corrected");
        Rig rig = RigReader.ofText(files.rig().toString(), correction.text());
        FieldWork work = FieldWork.of(analysis.log(), rig, files, threads);
        return analysis.with(new CorrectedRun(rig, work.coverage(List.of(), analysis.findings(), threads)));
    }

    /** Meters that the diagnosis puts in question: they widen the interval of all that rests on them. */
    private static List<MeterFault> meterFaults(Diagnosis diagnosis, LogTable log) {
        List<MeterFault> faults = new ArrayList<>();
        boolean corroborated = corroborated(log);
        for (int i = 0; i < diagnosis.findings().size(); i++) {
            MeterFault.of(diagnosis.findings().get(i), diagnosis.productsOf(i), corroborated)
                    .ifPresent(faults::add);
        }
        return faults;
    }

    /** By product, how much later the log shows its flow than the rig file says, s; 0 where it contradicts nothing. */
    private static List<Double> lateS(SetupCheck setup, Rig rig) {
        List<Double> lateS = new ArrayList<>(Collections.nCopies(rig.products().size(), 0.0));
        for (SetupMeasurement differing : setup.differing()) {
            if (differing.parameter() == SetupParameter.FLOW_LAG) {
                lateS.set(differing.product(), differing.change());
            }
        }
        return lateS;
    }

    /** True if a total meter or the rows' pressures are logged. */
    private static boolean corroborated(LogTable log) {
        for (int i = 0; i < log.records(); i++) {
            for (int p = 0; p < log.products().size(); p++) {
                if (!Double.isNaN(log.totalLPerS(p, i))) {
                    return true;
                }
            }
            if (log.outlets() > 0 && !Double.isNaN(log.rowPressurePa(0, i))) {
                return true;
            }
        }
        return false;
    }
}
