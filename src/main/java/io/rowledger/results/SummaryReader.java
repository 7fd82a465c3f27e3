package io.rowledger.results;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.JobFinding;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.uncertainty.Interval;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads {@code summary.json} back: what the ledger of a season and the summary of a batch add up. */
public final class SummaryReader {
    private final Path folder;
    private final JsonFile.Read<SummaryJson> file;
    private final SummaryJson json;

    private SummaryReader(Path folder) {
        this.folder = folder;
        this.file = JsonFile.read(folder, ResultFile.SUMMARY, SummaryJson.class);
        this.json = file.content();
    }

    /**
     * The job that a results folder holds.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code report} writes
     */
    public static SeasonJob read(Path folder) {
        return new SummaryReader(folder).job(rows(folder));
    }

    /** How the rows did, or null if the folder holds no diagnosis: it is not written for every reader. */
    private static @Nullable SavedDiagnosis rows(Path folder) {
        return Files.exists(folder.resolve(ResultFile.DIAGNOSIS.fileName())) ? DiagnosisReader.read(folder) : null;
    }

    /**
     * The same as {@link #figures}, with how the rows did.
     *
     * @throws UnusableInputException where the folder, or a file in it, isn't what {@code report} writes
     */
    public static BatchFigures figuresWithRows(Path folder) {
        return new SummaryReader(folder).jobFigures(rows(folder));
    }

    /**
     * The same with what a batch says of it.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code report} writes
     */
    public static BatchFigures figures(Path folder) {
        return new SummaryReader(folder).jobFigures(null);
    }

    private BatchFigures jobFigures(@Nullable SavedDiagnosis rows) {
        return new BatchFigures(
                job(rows),
                amount(json.field().skipAreaM2(), "field.skip_area_m2"),
                amount(json.field().overlapAreaM2(), "field.overlap_area_m2"));
    }

    private List<JobFinding> findings() {
        List<JobFinding> findings = new ArrayList<>();
        for (int i = 0; i < json.findings().size(); i++) {
            FindingJson.InSummary found = json.findings().get(i);
            findings.add(new JobFinding(
                    DiagnosisReader.kind(found.kind(), file, "findings[" + i + "]"),
                    found.rows(),
                    found.meters(),
                    found.confidence(),
                    found.alsoNoticed()));
        }
        return findings;
    }

    private SeasonJob job(@Nullable SavedDiagnosis rows) {
        SummaryJson.Field field = json.field();
        Map<String, String> facts = json.job().facts();
        double nitrogenKg = field.products().values().stream()
                .mapToDouble(SummaryJson.FieldProduct::nitrogenKg)
                .sum();
        return new SeasonJob(
                folder.toString(),
                json.inputs().stream().map(SummaryJson.Input::sha256).toList(),
                facts.getOrDefault("farm", ""),
                facts.getOrDefault("field", ""),
                facts.getOrDefault("crop", ""),
                zone(),
                JsonNumbers.epochS(field.start()),
                JsonNumbers.epochS(field.end()),
                amount(field.coveredAreaM2(), "field.covered_area_m2"),
                field.boundaryAreaM2(),
                products(),
                json.job().earlier().stream().map(JobJson.Earlier::application).toList(),
                json.job().credits().stream().map(JobJson.OneCredit::credit).toList(),
                JobJson.perM2(json.job().planNitrogenKgPerHa()),
                JobJson.perM2(json.job().capNitrogenKgPerHa()),
                interval(field.coveredAreaM2(), field.intervals().coveredAreaM2(), "covered_area_m2"),
                interval(nitrogenKg, field.intervals().nitrogenKg(), "nitrogen_kg"),
                findings(),
                rows);
    }

    private List<SeasonJob.AppliedProduct> products() {
        List<SeasonJob.AppliedProduct> products = new ArrayList<>();
        json.field()
                .products()
                .forEach((key, one) -> products.add(new SeasonJob.AppliedProduct(
                        key,
                        one.name(),
                        volume(one.volumeL(), "field.products." + key + ".volume_l"),
                        one.massKg(),
                        new NutrientKg(one.nitrogenKg(), one.phosphateKg(), one.potashKg(), one.sulfurKg()))));
        return products;
    }

    /** A volume; NaN, null in the file, if the log had no flow. */
    private double volume(double volumeL, String path) {
        return Double.isNaN(volumeL) ? volumeL : amount(volumeL, path);
    }

    private double amount(double figure, String path) {
        if (!(figure >= 0)) {
            throw file.wrong(path, "a number of zero or more");
        }
        return figure;
    }

    private Interval interval(double figure, IntervalsJson.@Nullable Bounds bounds, String key) {
        if (bounds == null) {
            return Interval.unknown(figure);
        }
        if (bounds.low() > bounds.high()) {
            throw file.wrong("field.intervals." + key, "low before high");
        }
        return new Interval(figure, bounds.low(), bounds.high());
    }

    private ZoneId zone() {
        try {
            return ZoneId.of(json.job().zone());
        } catch (DateTimeException e) {
            throw file.wrong("job.zone", "a time zone such as America/Chicago");
        }
    }
}
