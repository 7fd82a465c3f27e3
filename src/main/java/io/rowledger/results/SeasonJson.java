package io.rowledger.results;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.season.BarSeason;
import io.rowledger.report.season.RowSeason;
import io.rowledger.report.season.Season;
import io.rowledger.report.season.SeasonField;
import io.rowledger.report.season.SeasonJob;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** {@code season.json}: the nitrogen ledger of a season in SI, {@code null} where unknown. */
public record SeasonJson(
        String schema,
        String programVersion,
        Total season,
        List<Product> products,
        List<Field> fields,
        List<Bar> bars,
        List<String> notes) {

    /** Decimals of a ratio to the other rows. */
    private static final int RATIO = 4;

    /** Writes the ledger of a season. */
    public static void write(Season season, String programVersion, OutputStream out) throws IOException {
        JsonFile.write(
                new SeasonJson(
                        ResultFile.SEASON.schemaId(),
                        programVersion,
                        Total.of(season),
                        season.products().stream().map(Product::of).toList(),
                        season.fields().stream().map(Field::of).toList(),
                        BarSeason.of(season.jobs()).stream().map(Bar::of).toList(),
                        season.notes().stream().map(FindingFacts::filed).toList()),
                out);
    }

    /** Nutrients, kg. */
    record Nutrients(
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg,
            @Decimals(JsonNumbers.MASS_KG) double phosphateKg,
            @Decimals(JsonNumbers.MASS_KG) double potashKg,
            @Decimals(JsonNumbers.MASS_KG) double sulfurKg) {
        static Nutrients of(NutrientKg kg) {
            return new Nutrients(kg.nitrogenKg(), kg.phosphateKg(), kg.potashKg(), kg.sulfurKg());
        }
    }

    /** Nitrogen from other sources, and with that of the jobs, kg. */
    record OtherNitrogen(
            @Decimals(JsonNumbers.MASS_KG) double earlierNitrogenKg,
            @Decimals(JsonNumbers.MASS_KG) double creditNitrogenKg,
            @Decimals(JsonNumbers.MASS_KG) double totalNitrogenKg) {
        static OtherNitrogen of(double earlierKg, double creditKg, double jobsKg) {
            return new OtherNitrogen(earlierKg, creditKg, jobsKg + earlierKg + creditKg);
        }
    }

    /** The whole season. */
    record Total(
            int jobs,
            @Decimals(JsonNumbers.AREA_M2) double workedAreaM2,
            @JsonUnwrapped Nutrients nutrients,
            @JsonUnwrapped OtherNitrogen other,
            @Decimals(JsonNumbers.AREA_M2) double workedAreaM2Low,
            @Decimals(JsonNumbers.AREA_M2) double workedAreaM2High,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKgLow,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKgHigh) {
        static Total of(Season s) {
            return new Total(
                    s.jobs().size(),
                    s.coveredM2(),
                    Nutrients.of(s.kg()),
                    OtherNitrogen.of(s.earlierKg(), s.creditKg(), s.kg().nitrogenKg()),
                    s.coveredWithin().low(),
                    s.coveredWithin().high(),
                    s.nitrogenWithin().low(),
                    s.nitrogenWithin().high());
        }
    }

    /** One product over the season. */
    record Product(
            String name,
            int jobs,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.MASS_KG) double massKg,
            @JsonUnwrapped Nutrients nutrients) {
        static Product of(Season.Product product) {
            return new Product(
                    product.name(), product.jobs(), product.volumeL(), product.massKg(), Nutrients.of(product.kg()));
        }
    }

    /** One field. */
    record Field(
            String farm,
            String field,
            @Decimals(JsonNumbers.AREA_M2) double areaM2,
            @JsonUnwrapped Nutrients nutrients,
            @JsonUnwrapped OtherNitrogen other,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKgLow,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKgHigh,
            @Decimals(JsonNumbers.RATE) double totalNitrogenKgPerHa,
            @Decimals(JsonNumbers.RATE) double planNitrogenKgPerHa,
            @Decimals(JsonNumbers.RATE) double capNitrogenKgPerHa,
            List<Job> jobs) {
        static Field of(SeasonField field) {
            return new Field(
                    field.farm(),
                    field.field(),
                    field.areaM2(),
                    Nutrients.of(field.kg()),
                    OtherNitrogen.of(
                            field.earlierKg(), field.creditKg(), field.kg().nitrogenKg()),
                    field.nitrogenWithin().low(),
                    field.nitrogenWithin().high(),
                    JobJson.perHa(field.totalKgPerM2()),
                    JobJson.perHa(field.planKgPerM2()),
                    JobJson.perHa(field.capKgPerM2()),
                    field.jobs().stream().map(Job::of).toList());
        }
    }

    /** One job: the folder of its results and the SHA-256 of its logs. */
    record Job(
            String folder,
            @JsonProperty("sha256") List<String> sha256,
            String crop,
            @OrNull @Nullable Instant start,
            @OrNull @Nullable Instant end,
            @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2,
            List<JobProduct> products) {
        static Job of(SeasonJob job) {
            return new Job(
                    job.folder(),
                    job.digests(),
                    job.crop(),
                    JsonNumbers.instant(job.startS()),
                    JsonNumbers.instant(job.endS()),
                    job.coveredM2(),
                    job.products().stream().map(JobProduct::of).toList());
        }
    }

    /** One product of a job. */
    record JobProduct(
            String key,
            String name,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.MASS_KG) double massKg,
            @JsonUnwrapped Nutrients nutrients) {
        static JobProduct of(SeasonJob.AppliedProduct put) {
            return new JobProduct(put.key(), put.name(), put.volumeL(), put.massKg(), Nutrients.of(put.kg()));
        }
    }

    /** The rows of one bar with one product; {@code jobs} are the folders of its jobs in time order. */
    record Bar(String rig, String product, List<String> jobs, List<Row> rows) {
        static Bar of(BarSeason bar) {
            return new Bar(
                    bar.rig(),
                    bar.product(),
                    bar.jobs().stream().map(SeasonJob::folder).toList(),
                    bar.rows().stream()
                            .map(row -> Row.of(row, bar.rows().size()))
                            .toList());
        }
    }

    /**
     * One row over the jobs.
     *
     * @param ratioChange change of its ratio to the other rows from the first to the last job (1)
     * @param ratioChangeUncertainty half-width with 90 % coverage
     * @param drifts true if that is beyond what all rows together show by chance
     * @param toCalibrate true if its meter should be checked before the next season
     * @param jobs one per job of the bar
     */
    record Row(
            int row,
            @Decimals(RATIO) double ratioChange,
            @Decimals(RATIO) double ratioChangeUncertainty,
            boolean drifts,
            @Decimals(JsonNumbers.LENGTH_M) double responseChangeS,
            @Decimals(JsonNumbers.LENGTH_M) double responseChangeUncertaintyS,
            boolean responseDrifts,
            boolean toCalibrate,
            List<RowJob> jobs) {
        static Row of(RowSeason row, int rows) {
            RowSeason.Drift ratio = row.ratioDrift(rows);
            RowSeason.Drift response = row.responseDrift(rows);
            return new Row(
                    row.row(),
                    ratio.change(),
                    ratio.uncertainty(),
                    ratio.told(),
                    response.change(),
                    response.uncertainty(),
                    response.told(),
                    row.toCalibrate(rows),
                    row.jobs().stream().map(RowJob::of).toList());
        }
    }

    /** A row in one job: its ratio to the other rows while healthy and in all (1), its response time, s, its findings. */
    record RowJob(
            @Decimals(RATIO) double ratio,
            @Decimals(RATIO) double overallRatio,
            @Decimals(JsonNumbers.LENGTH_M) double responseS,
            @Decimals(JsonNumbers.LENGTH_M) double evaluatedS,
            List<String> findings) {
        static RowJob of(RowSeason.OfJob job) {
            return new RowJob(
                    job.ratio(),
                    job.overall(),
                    job.responseS(),
                    job.evaluatedS(),
                    job.findings().stream().map(FindingKind::jsonName).toList());
        }
    }
}
