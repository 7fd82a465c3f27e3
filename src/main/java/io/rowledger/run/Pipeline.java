package io.rowledger.run;

import io.rowledger.coverage.Boundary;
import io.rowledger.coverage.BoundaryReader;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.diagnose.Diagnoses;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.setup.SetupCheck;
import io.rowledger.diagnose.setup.SetupChecks;
import io.rowledger.diagnose.setup.SetupFindings;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogOptions;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogReading;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.report.Analysis;
import io.rowledger.report.CorrectedRun;
import io.rowledger.report.SetupReview;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigCorrection;
import io.rowledger.rig.RigReader;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
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
        Rig rig = RigReader.read(files.rig()).rig();
        progress.begins(
                "reading the log",
                files.logs().size() == 1 ? "1 file" : files.logs().size() + " files");
        LogReading reading = LogReader.read(files.logs(), logOptions(rig));
        progress.begins("rebuilding the track", reading.table().records() + " records");
        Track track =
                TrackBuilder.build(reading.table(), rig, TrackOptions.usual().withThreads(threads));
        Boundary boundary = files.boundary() == null
                ? null
                : BoundaryReader.read(files.boundary(), track.plane(), driven(track.poses()));
        Strips strips = new Strips(track.poses(), rig.bands());
        progress.begins("summing rows", track.poses().steps() + " steps of " + rig.rows() + " rows");
        Delivery delivery = DeliveryBuilder.build(reading.table(), rig, strips);
        Rates rates = RatesBuilder.build(track, strips, delivery);
        progress.begins("laying out the ground", track.passes().size() + " passes");
        Coverage coverage = Coverages.of(track, strips, delivery, boundary, CoverageOptions.standard(threads));
        requireSameField(boundary, coverage);
        progress.begins("judging the rows", rig.rows() + " rows");
        Diagnosis ofRows = Diagnoses.of(reading.table(), rig, track, strips, delivery);
        SetupCheck setup = SetupChecks.of(reading.table(), rig, track, ofRows);
        Diagnosis diagnosis = SetupFindings.into(ofRows, setup, rig, track, delivery);
        List<String> notes = Notes.of(reading, rig, track, boundary, coverage);
        SetupReview review = new SetupReview(setup, RigCorrection.of(files.rig(), setup.changes()), null);
        return new Analysis(rig, reading.table(), track, strips, delivery, rates, coverage, diagnosis, review, notes);
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
                "laying out the ground as the log says", correction.lines().size() + " measures changed");
        Rig rig = RigReader.ofText(files.rig().toString(), correction.text());
        LogTable log = analysis.log();
        Track track = TrackBuilder.build(log, rig, TrackOptions.usual().withThreads(threads));
        Strips strips = new Strips(track.poses(), rig.bands());
        Delivery delivery = DeliveryBuilder.build(log, rig, strips);
        Coverage coverage = Coverages.of(
                track, strips, delivery, analysis.coverage().boundary(), CoverageOptions.standard(threads));
        return analysis.with(new CorrectedRun(rig, coverage));
    }

    /** Ground that lies wholly outside the boundary belongs to another field, and every skip would be wrong. */
    private static void requireSameField(@Nullable Boundary boundary, Coverage coverage) {
        double coveredM2 = coverage.coveredAreaM2();
        if (boundary != null && coveredM2 > 0 && coverage.outsideBoundaryM2() >= WHOLLY_OUTSIDE * coveredM2) {
            throw UnusableInputException.found("a boundary that holds none of the ground the log covers")
                    .inFile(boundary.file())
                    .expected("the outline of the field that was driven")
                    .mend("give the boundary of this field, or leave it out");
        }
    }

    /** What the rig file says about the logs. */
    static LogOptions logOptions(Rig rig) {
        return new LogOptions(
                rig.columns(), rig.products().stream().map(Product::key).toList(), rig.rows());
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
