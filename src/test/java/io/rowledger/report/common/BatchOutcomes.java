package io.rowledger.report.common;

import io.rowledger.finding.FindingKind;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchOutcome.Result;
import io.rowledger.report.season.JobFinding;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.uncertainty.Interval;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A batch made up by hand: one job of every result. */
public final class BatchOutcomes {
    private static final double JUNE_2_NOON = 1_780_423_200;
    private static final double ACRE_M2 = 4046.8564224;
    private static final double GALLON_L = 3.785411784;
    private static final double POUND_KG = 0.45359237;

    private BatchOutcomes() {}

    /** By name. */
    public static List<BatchOutcome> ofEveryResult() {
        return List.of(
                done(
                        "creek",
                        Result.DONE,
                        figures(
                                10,
                                400,
                                1420,
                                null,
                                new JobFinding(FindingKind.PLUGGED, List.of(7), 0.97),
                                new JobFinding(FindingKind.HUNTING, List.of(), 0.4))),
                asBefore(null),
                new BatchOutcome(
                        "north",
                        Result.UNUSABLE,
                        1,
                        "",
                        "north/log.csv: found nonsense; expected a log. Hint: export it again.",
                        null,
                        null),
                new BatchOutcome(
                        "old",
                        Result.SAME_LOG,
                        1,
                        "1 log.",
                        "Its logs are those of hill, and are counted there.",
                        null,
                        null),
                new BatchOutcome("pond", Result.FAILED, 2, "2 logs as one job.", "java.lang.X: y\n\tat z", null, null));
    }

    /** A job done before, whose results hold these rows, if any. */
    public static BatchOutcome asBefore(@Nullable SavedDiagnosis rows) {
        return done("hill", Result.AS_BEFORE, figures(30, 1200, 4260, rows));
    }

    private static BatchOutcome done(String name, Result result, BatchFigures figures) {
        return new BatchOutcome(name, result, 1, "1 log, rig.yaml, boundary.geojson.", "", name, figures);
    }

    private static BatchFigures figures(
            double acres, double gallons, double poundsN, @Nullable SavedDiagnosis rows, JobFinding... faults) {
        SeasonJob job = new SeasonJob(
                "folder",
                List.of(),
                "",
                "",
                "",
                ZoneOffset.UTC,
                JUNE_2_NOON,
                JUNE_2_NOON + 3600,
                acres * ACRE_M2,
                Double.NaN,
                List.of(new SeasonJob.AppliedProduct(
                        "uan", "UAN 32-0-0", gallons * GALLON_L, 0, new NutrientKg(poundsN * POUND_KG, 0, 0, 0))),
                List.of(),
                List.of(),
                Double.NaN,
                Double.NaN,
                new Interval(acres * ACRE_M2, acres * ACRE_M2 * 0.99, acres * ACRE_M2 * 1.01),
                new Interval(poundsN * POUND_KG, poundsN * POUND_KG * 0.98, poundsN * POUND_KG * 1.02),
                List.of(faults),
                rows);
        return new BatchFigures(job, 0.5 * ACRE_M2, 0.25 * ACRE_M2);
    }
}
