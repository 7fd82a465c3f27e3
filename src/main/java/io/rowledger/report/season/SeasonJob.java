package io.rowledger.report.season;

import io.rowledger.rate.NutrientKg;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.uncertainty.Interval;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One job of a season, as a results folder has it.
 *
 * @param folder the folder as given
 * @param digests SHA-256 of its logs, which identify the job
 * @param farm as entered, or empty
 * @param field as entered, or empty
 * @param crop as entered, or empty
 * @param zone time zone of its days
 * @param startS start of the first pass, epoch seconds; NaN for a log without a pass
 * @param endS end of the last pass, epoch seconds; NaN likewise
 * @param coveredM2 covered ground, m²
 * @param boundaryM2 ground inside the boundary, m²; NaN without one
 * @param products what was applied
 * @param earlier earlier applications, as entered for this job
 * @param credits nitrogen credits, as entered for this job
 * @param planKgPerM2 nitrogen planned, kg/m²; NaN without a plan
 * @param capKgPerM2 nitrogen not to be exceeded, kg/m²; NaN without a cap
 * @param coveredWithin covered ground and its bounds, m²
 * @param nitrogenWithin the job's nitrogen and its bounds, kg
 * @param findings what may be wrong with the machine or the rig file, most certain first
 * @param rows how each row did; null if the results don't hold it
 */
public record SeasonJob(
        String folder,
        List<String> digests,
        String farm,
        String field,
        String crop,
        ZoneId zone,
        double startS,
        double endS,
        double coveredM2,
        double boundaryM2,
        List<AppliedProduct> products,
        List<EarlierApplication> earlier,
        List<Credit> credits,
        double planKgPerM2,
        double capKgPerM2,
        Interval coveredWithin,
        Interval nitrogenWithin,
        List<JobFinding> findings,
        @Nullable SavedDiagnosis rows) {
    /** Copies the lists. */
    public SeasonJob {
        digests = List.copyOf(digests);
        products = List.copyOf(products);
        earlier = List.copyOf(earlier);
        credits = List.copyOf(credits);
        findings = List.copyOf(findings);
    }

    /** A product of the job: volume L, mass kg, and its nutrients; NaN where unknown. */
    public record AppliedProduct(String key, String name, double volumeL, double massKg, NutrientKg kg) {}

    /** Nutrients of all products. */
    public NutrientKg kg() {
        NutrientKg sum = NutrientKg.NONE;
        for (AppliedProduct product : products) {
            sum = sum.plus(product.kg());
        }
        return sum;
    }

    /** Nitrogen of the job, kg. */
    public double nitrogenKg() {
        return kg().nitrogenKg();
    }

    /** True if the job worked on this day of its own time zone. */
    boolean workedOn(LocalDate day) {
        return Double.isFinite(startS) && !day.isBefore(day(startS)) && !day.isAfter(day(endS));
    }

    private LocalDate day(double epochS) {
        return Instant.ofEpochMilli(Math.round(epochS * 1000)).atZone(zone).toLocalDate();
    }
}
