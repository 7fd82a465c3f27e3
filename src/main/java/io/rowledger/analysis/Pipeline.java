package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.coverage.sections.Grouping;
import io.rowledger.diagnose.Diagnoses;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.setup.SetupCheck;
import io.rowledger.diagnose.setup.SetupChecks;
import io.rowledger.diagnose.setup.SetupFindings;
import io.rowledger.field.Boundary;
import io.rowledger.field.BoundaryReader;
import io.rowledger.field.KeepOutReader;
import io.rowledger.field.KeepOuts;
import io.rowledger.field.Prescription;
import io.rowledger.field.PrescriptionReader;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogReading;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigCorrection;
import io.rowledger.rig.RigFile;
import io.rowledger.rig.RigReader;
import io.rowledger.setback.Setbacks;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.IntervalsBuilder;
import io.rowledger.uncertainty.MeterFault;
import io.rowledger.uncertainty.UncertaintyInputs;
import io.rowledger.whatif.WhatIf;
import io.rowledger.zones.Zones;
import io.rowledger.zones.ZonesBuilder;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;

/** The main job: logs and a rig in, everything computed out. */
public final class Pipeline {
    /** From this share of the covered ground on, all of it lies outside. */
    private static final double WHOLLY_OUTSIDE = 0.999;

    private Pipeline() {}

    /**
     * Analyses the logs of one field as one job.
     *
     * @param files what the person hands in; only read
     * @param threads threads to use; the result is the same for any number
     * @param progress hears the phases
     * @throws UnusableInputException where a file can't be used
     */
    public static Analysis analyse(JobFiles files, int threads, Progress progress) {
        progress.begins("reading the rig", files.rig().toString());
        RigFile rigFile = RigReader.read(files.rig());
        Rig rig = rigFile.rig();
        progress.begins(
                "reading the log",
                files.logs().size() == 1 ? "1 file" : files.logs().size() + " files");
        LogReading reading = LogReader.read(files.logs(), rig.logOptions());
        progress.begins("rebuilding the track", reading.table().records() + " records");
        Track track =
                TrackBuilder.build(reading.table(), rig, TrackOptions.defaults().withThreads(threads));
        Maps maps = Maps.of(files, rig, track);
        Strips strips = new Strips(track.poses(), rig.bands());
        progress.begins("summing rows", track.poses().steps() + " steps of " + rig.rows() + " rows");
        ZonesBuilder zoning = maps.zoning(strips, rig);
        Delivery delivery =
                DeliveryBuilder.build(reading.table(), rig, strips, zoning == null ? null : zoning.prescribedRates());
        Rates rates = RatesBuilder.build(track, strips, delivery);
        progress.begins("computing coverage", track.passes().size() + " passes");
        Coverage coverage = Coverages.of(
                track,
                strips,
                delivery,
                maps.boundary(),
                Grouping.candidates(rig.bands()),
                CoverageOptions.defaults(threads));
        requireSameField(maps.boundary(), coverage);
        Setbacks setbacks = maps.setbacks(strips, delivery, coverage, rig, threads);
        Zones zones = zoning == null ? null : zoning.zones(reading.table(), track.passes(), delivery, coverage);
        requireSameField(zones, coverage);
        progress.begins("diagnosing rows", rig.rows() + " rows");
        Diagnosis ofRows = Diagnoses.of(reading.table(), rig, track, strips, delivery);
        SetupCheck setup = SetupChecks.of(reading.table(), rig, track, ofRows);
        Diagnosis diagnosis = SetupFindings.into(ofRows, setup, rig, track, delivery);
        progress.begins("estimating uncertainty", "positions, meters, setup");
        Intervals intervals = IntervalsBuilder.of(
                new UncertaintyInputs(reading.table(), rig, track, strips, delivery, meterFaults(diagnosis)),
                rates,
                coverage,
                threads);
        List<String> notes = new ArrayList<>(maps.notes());
        notes.addAll(JobNotes.of(reading, rig, track, maps.boundary(), coverage, setbacks, zones));
        List<InputFile> setups = SetupFiles.of(files, rigFile, reading);
        return new Analysis(
                rig,
                reading.table(),
                track,
                strips,
                delivery,
                rates,
                coverage,
                diagnosis,
                intervals,
                new SetupReview(setup, RigCorrection.of(files.rig(), setup.changes()), null),
                notes,
                setbacks,
                zones,
                setups,
                WhatIf.of(strips, delivery, coverage, diagnosis));
    }

    /**
     * The maps handed in, on the log's own plane; each null where it wasn't.
     *
     * @param boundary the field's outline
     * @param prescription target rates
     * @param keepOuts places to keep away from
     */
    private record Maps(
            @Nullable Boundary boundary,
            @Nullable Prescription prescription,
            @Nullable KeepOuts keepOuts) {
        static Maps of(JobFiles files, Rig rig, Track track) {
            Envelope driven = driven(track.poses());
            return new Maps(
                    files.boundary() == null ? null : BoundaryReader.read(files.boundary(), track.plane(), driven),
                    files.prescription() == null
                            ? null
                            : PrescriptionReader.read(
                                    files.prescription(),
                                    track.plane(),
                                    driven,
                                    rig.products(),
                                    rig.hints().prescription()),
                    files.keepOut() == null
                            ? null
                            : KeepOutReader.read(files.keepOut(), track.plane(), driven, files.setbackM()));
        }

        /** What was taken for granted about the files. */
        List<String> notes() {
            List<String> notes = new ArrayList<>();
            notes.addAll(boundary == null ? List.of() : boundary.notes());
            notes.addAll(prescription == null ? List.of() : prescription.notes());
            notes.addAll(keepOuts == null ? List.of() : keepOuts.notes());
            return notes;
        }

        @Nullable
        ZonesBuilder zoning(Strips strips, Rig rig) {
            return prescription == null
                    ? null
                    : new ZonesBuilder(prescription, strips, rig.products().size());
        }

        @Nullable
        Setbacks setbacks(Strips strips, Delivery delivery, Coverage coverage, Rig rig, int threads) {
            return keepOuts == null
                    ? null
                    : Setbacks.of(keepOuts, strips, delivery, coverage.strips(), rig.products(), threads);
        }
    }

    /**
     * The same analysis with the ground laid out again, by the setup that the log says; unchanged where the log contradicts
     * nothing. The rig file is only read.
     *
     * @param analysis of these files
     */
    public static Analysis withSetupApplied(Analysis analysis, JobFiles files, int threads, Progress progress) {
        RigCorrection.Corrected correction = analysis.setup().correction();
        if (correction.lines().isEmpty()) {
            return analysis;
        }
        progress.begins(
                "computing coverage with the corrected setup",
                correction.lines().size() + " measures changed");
        Rig rig = RigReader.ofText(files.rig().toString(), correction.text());
        LogTable log = analysis.log();
        Track track = TrackBuilder.build(log, rig, TrackOptions.defaults().withThreads(threads));
        Strips strips = new Strips(track.poses(), rig.bands());
        ZonesBuilder zoning = Maps.of(files, rig, track).zoning(strips, rig);
        Delivery delivery = DeliveryBuilder.build(log, rig, strips, zoning == null ? null : zoning.prescribedRates());
        Coverage coverage = Coverages.of(
                track, strips, delivery, analysis.coverage().boundary(), CoverageOptions.defaults(threads));
        return analysis.with(new CorrectedRun(rig, coverage));
    }

    /** Ground that lies wholly outside the boundary belongs to another field, and every skip would be wrong. */
    private static void requireSameField(@Nullable Boundary boundary, Coverage coverage) {
        double coveredM2 = coverage.coveredAreaM2();
        if (boundary != null && coveredM2 > 0 && coverage.outsideBoundaryM2() >= WHOLLY_OUTSIDE * coveredM2) {
            throw UnusableInputException.found("a boundary that holds none of the ground the log covers")
                    .inFile(boundary.file())
                    .expected("the outline of the field that was driven")
                    .hint("give the boundary of this field, or leave it out");
        }
    }

    private static void requireSameField(@Nullable Zones zones, Coverage coverage) {
        double coveredM2 = coverage.coveredAreaM2();
        if (zones != null && coveredM2 > 0 && zones.outsideCoveredM2() >= WHOLLY_OUTSIDE * coveredM2) {
            throw UnusableInputException.found("a prescription that holds none of the ground the log covers")
                    .inFile(zones.prescription().file())
                    .expected("the zones of the field that was driven")
                    .hint("give the prescription of this field, or leave it out");
        }
    }

    /** Meters that the diagnosis puts in question: they widen the interval of all that rests on them. */
    private static List<MeterFault> meterFaults(Diagnosis diagnosis) {
        List<MeterFault> faults = new ArrayList<>();
        for (int i = 0; i < diagnosis.findings().size(); i++) {
            MeterFault.of(
                            diagnosis.findings().get(i),
                            diagnosis.windows().get(i).product())
                    .ifPresent(faults::add);
        }
        return faults;
    }

    /** The ground the drop line came over, so that a boundary of another field can be told how far off it is. */
    private static Envelope driven(Poses poses) {
        Envelope driven = new Envelope();
        for (int i = 0; i < poses.poses(); i++) {
            driven.expandToInclude(poses.dropEastM(i), poses.dropNorthM(i));
        }
        return driven;
    }
}
