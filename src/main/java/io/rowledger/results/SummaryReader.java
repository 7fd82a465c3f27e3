package io.rowledger.results;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.Factor;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/** Reads back of {@code summary.json} what a season's ledger adds up; what it can't use it says by file and place. */
public final class SummaryReader {
    /** The file it reads. */
    public static final String FILE = "summary.json";

    private SummaryReader() {}

    /**
     * The job a results folder holds.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code report} writes
     */
    public static SeasonJob read(Path folder) {
        return job(folder, ResultFile.open(folder, FILE, SummaryJson.SCHEMA_ID));
    }

    /**
     * The same with what a batch says of it.
     *
     * @throws UnusableInputException where the folder, or the file in it, isn't what {@code report} writes
     */
    public static BatchFigures figures(Path folder) {
        ResultValue root = ResultFile.open(folder, FILE, SummaryJson.SCHEMA_ID);
        List<BatchFigures.Fault> findings = new ArrayList<>();
        for (ResultValue one : root.at("findings").list()) {
            List<Integer> rows = one.at("rows").list().stream()
                    .map(row -> row.whole(1, Integer.MAX_VALUE))
                    .toList();
            findings.add(new BatchFigures.Fault(
                    DiagnosisReader.kind(one.at("kind")),
                    rows,
                    one.at("confidence").number()));
        }
        ResultValue field = root.at("field");
        return new BatchFigures(
                job(folder, root), amount(field, "missed_area_m2"), amount(field, "overlap_area_m2"), findings);
    }

    private static SeasonJob job(Path folder, ResultValue root) {
        List<String> digests = new ArrayList<>();
        for (ResultValue input : root.at("inputs").list()) {
            digests.add(input.at("sha256").text());
        }
        ResultValue job = root.at("job");
        ResultValue field = root.at("field");
        List<EarlierApplication> earlier = new ArrayList<>();
        for (ResultValue one : job.at("earlier").list()) {
            earlier.add(new EarlierApplication(
                    one.at("date").text(),
                    one.at("what").text(),
                    perM2(one, "nitrogen_kg_per_ha"),
                    perM2(one, "phosphate_kg_per_ha"),
                    perM2(one, "potash_kg_per_ha"),
                    perM2(one, "sulfur_kg_per_ha"),
                    one.at("entered").text()));
        }
        List<Credit> credits = new ArrayList<>();
        for (ResultValue one : job.at("credits").list()) {
            credits.add(new Credit(
                    one.at("what").text(),
                    perM2(one, "nitrogen_kg_per_ha"),
                    one.at("entered").text()));
        }
        ResultValue facts = job.at("facts");
        return new SeasonJob(
                folder.toString(),
                digests,
                fact(facts, "farm"),
                fact(facts, "field"),
                fact(facts, "crop"),
                zone(job.at("zone")),
                field.at("start").time(),
                field.at("end").time(),
                amount(field, "covered_area_m2"),
                field.at("boundary_area_m2").number(),
                products(field.at("products")),
                earlier,
                credits,
                perM2(job, "plan_nitrogen_kg_per_ha"),
                perM2(job, "cap_nitrogen_kg_per_ha"),
                within(field, "covered_area_m2", field.at("covered_area_m2").number()),
                within(field, "nitrogen_kg", nitrogenKg(field.at("products"))));
    }

    private static List<SeasonJob.Put> products(ResultValue products) {
        List<SeasonJob.Put> list = new ArrayList<>();
        for (String key : products.keys()) {
            ResultValue one = products.at(key);
            NutrientKg kg = new NutrientKg(
                    one.at("nitrogen_kg").number(),
                    one.at("phosphate_kg").number(),
                    one.at("potash_kg").number(),
                    one.at("sulfur_kg").number());
            list.add(new SeasonJob.Put(
                    key,
                    one.at("name").text(),
                    amount(one, "volume_l"),
                    one.at("mass_kg").number(),
                    kg));
        }
        return list;
    }

    /** A figure that has to be there. */
    private static double amount(ResultValue value, String key) {
        double number = value.at(key).number();
        if (!(number >= 0)) {
            throw value.at(key).wrong("no amount", "a number of zero or more");
        }
        return number;
    }

    private static double nitrogenKg(ResultValue products) {
        double sumKg = 0;
        for (String key : products.keys()) {
            sumKg += products.at(key).at("nitrogen_kg").number();
        }
        return sumKg;
    }

    /** A figure with its bounds; results of earlier versions have none. */
    private static Interval within(ResultValue field, String key, double figure) {
        if (!field.keys().contains("intervals") || field.at("intervals").isNull()) {
            return Interval.unknown(figure);
        }
        ResultValue intervals = field.at("intervals");
        if (!intervals.keys().contains(key) || intervals.at(key).isNull()) {
            return Interval.unknown(figure);
        }
        ResultValue bounds = intervals.at(key);
        double low = bounds.at("low").number();
        double high = bounds.at("high").number();
        if (low > high) {
            throw bounds.wrong("a low bound above the high one", "low before high");
        }
        return new Interval(figure, low, high);
    }

    private static double perM2(ResultValue value, String key) {
        return value.at(key).number() / Factor.SQUARE_METRES_PER_HECTARE;
    }

    private static String fact(ResultValue facts, String key) {
        return facts.keys().contains(key) ? facts.at(key).text() : "";
    }

    private static ZoneId zone(ResultValue value) {
        try {
            return ZoneId.of(value.text());
        } catch (DateTimeException e) {
            throw value.wrong("'" + value.text() + "'", "a time zone such as America/Chicago");
        }
    }
}
