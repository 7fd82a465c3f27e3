package io.rowledger.report.record;

import static io.rowledger.report.record.RecordRule.INDIANA;
import static io.rowledger.report.record.RecordRule.MARYLAND_FARM;
import static io.rowledger.report.record.RecordRule.MARYLAND_HIRE;
import static io.rowledger.report.record.RecordRule.MARYLAND_TURF;
import static io.rowledger.report.record.RecordRule.MINNESOTA_HIRE;
import static io.rowledger.report.record.RecordRule.NEBRASKA;
import static io.rowledger.report.record.RecordRule.NRCS_590;
import static io.rowledger.report.record.RecordRule.OHIO;
import static io.rowledger.report.record.RecordRule.UTAH;
import static io.rowledger.report.record.RecordRule.WISCONSIN;

import io.rowledger.report.record.RecordField.From;
import io.rowledger.report.record.RecordField.Kept;
import io.rowledger.rig.Job;
import java.util.ArrayList;
import java.util.List;

/**
 * What a nitrogen record should hold: the facts a landlord's file needs and the published rules that ask for each. Every
 * key of the job block that the program looks for stands here once, and nothing else does; a test holds the two together.
 */
public final class RecordFields {
    /** Above and below every list of rules. */
    public static final String DEFER = "Examples of published rules; defer to your local rules.";

    private static final List<RecordField> ALL = new ArrayList<>();

    static {
        ofTheLog();
        ofTheRigFile();
        ofPeopleAndPlace();
        ofTheCrop();
        ofTheDay();
        ofTheWork();
        ofFigures();
        keptBeside();
    }

    private RecordFields() {}

    /** Every fact, in the order of the record. */
    public static List<RecordField> all() {
        return List.copyOf(ALL);
    }

    /**
     * What belongs into this job's record, was asked for by a rule whose source was read, and that nobody entered. What
     * applies to some work only ({@link Kept#WHERE_IT_APPLIES}) is among it: a reader can't tell from its absence that it
     * did not apply.
     */
    public static List<RecordField> notRecorded(Job job) {
        return ALL.stream()
                .filter(field -> field.from() == From.JOB && field.kept() != Kept.BESIDE_IT && field.asked())
                .filter(field -> !isRecorded(field, job))
                .toList();
    }

    /** True where the job block holds the fact. */
    public static boolean isRecorded(RecordField field, Job job) {
        return switch (field.key()) {
            case "plan" -> Double.isFinite(job.planKgPerM2());
            case "cap" -> Double.isFinite(job.capKgPerM2());
            case "earlier" -> !job.earlier().isEmpty();
            case "credits" -> !job.credits().isEmpty();
            case "order" -> !job.order().isEmpty();
            case "tickets" -> !job.tickets().isEmpty();
            case "price" -> !job.prices().isEmpty();
            default -> job.fact(field.key()).isPresent();
        };
    }

    private static void ofTheLog() {
        log("log_place", "Where: the ground covered, on a map", OHIO, MARYLAND_HIRE, UTAH);
        log(
                "log_times",
                "When: day, start and end",
                OHIO,
                MARYLAND_HIRE,
                MARYLAND_FARM,
                MARYLAND_TURF,
                INDIANA,
                UTAH,
                NRCS_590);
        log(
                "log_area",
                "Acres covered, and how they were measured",
                OHIO,
                MARYLAND_HIRE,
                MARYLAND_TURF,
                MINNESOTA_HIRE,
                NEBRASKA);
        log(
                "log_volume",
                "Total amount, volume and weight",
                OHIO,
                MARYLAND_HIRE,
                MARYLAND_FARM,
                MARYLAND_TURF,
                MINNESOTA_HIRE,
                INDIANA,
                NRCS_590);
        log(
                "log_rate",
                "Rate of the product and of nitrogen",
                OHIO,
                MARYLAND_FARM,
                MARYLAND_TURF,
                NEBRASKA,
                UTAH,
                NRCS_590);
    }

    private static void ofTheRigFile() {
        rig("rig_product", "Product", "products: name", MARYLAND_HIRE, MARYLAND_FARM, NRCS_590);
        rig(
                "rig_analysis",
                "Analysis",
                "products: analysis",
                OHIO,
                MARYLAND_HIRE,
                MARYLAND_FARM,
                MARYLAND_TURF,
                MINNESOTA_HIRE,
                INDIANA,
                NRCS_590);
        rig("rig_density", "Density and its temperature", "products: density, density_at");
        rig("rig_target", "Target rate", "products: target, unless the log has it");
        rig("rig_spacing", "Row spacing", "rows: spacing");
        rig("rig_machine", "Machine", "rig: name", UTAH);
    }

    private static void ofPeopleAndPlace() {
        job("farm", "Farm", "Two Oaks");
        job("field", "Field", "North bottom", OHIO, MARYLAND_HIRE, MARYLAND_FARM, UTAH);
        job("tract", "Tract or parcel", "T 1024, field 3");
        job("county", "County", "");
        job("state", "State", "");
        job("address", "Address", "", MARYLAND_TURF, MINNESOTA_HIRE);
        job("operator", "Operator", "");
        job("landlord", "Landlord", "");
        job("customer", "Customer", "", MINNESOTA_HIRE, INDIANA);
        job("company", "Company that applied", "");
        job("applicator", "Applicator", "", OHIO, MARYLAND_TURF);
        job("certificate", "Applicator's certificate number", "", MARYLAND_HIRE, INDIANA);
        job("certificate_holder", "Certificate holder", "", OHIO);
    }

    private static void ofTheCrop() {
        job("crop", "Crop", "Corn", MARYLAND_HIRE, NEBRASKA, UTAH, NRCS_590);
        job("stage", "Stage of the crop", "V6");
        job("planted", "Planting date", "2026-04-28", UTAH, NRCS_590);
        job("yield_goal", "Yield goal", "200 bu/ac");
    }

    private static void ofTheDay() {
        job("date", "Date, where the log's own day needs a word", "2026-06-02");
        job("soil", "Soil and its condition", "Moist silt loam", OHIO);
        job("soil_moisture", "Soil moisture", "Moist from 1 in down", UTAH, NRCS_590);
        job("weather", "Weather", "Fair", OHIO, UTAH, NRCS_590);
        job("temperature", "Air temperature", "72 F", OHIO);
        job("wind", "Wind", "8 mph from the southwest");
        job("precipitation", "Precipitation", "None that day", OHIO);
        job("forecast", "Forecast for the next day", "Showers after noon", OHIO);
        applies("frozen_or_snow", "Frozen or snow-covered ground (surface work)", "No", OHIO);
    }

    private static void ofTheWork() {
        job("method", "Method", "Coulter-injected between the rows", OHIO, UTAH, NRCS_590);
        job("depth", "Depth", "4 in");
        job("knives", "Knife pattern", "Every middle");
        applies("incorporation", "Time to rain or incorporation", "Rain next day", NRCS_590);
        job("source", "Supplier of the product", "", UTAH, NRCS_590);
        applies("derived_from", "Where the nutrients derive from (label)", "Urea, ammonium nitrate", MINNESOTA_HIRE);
        applies("reason", "Reason for a change from the plan, if there was one", "", MARYLAND_FARM);
        job("notes", "Notes", "");
        job("zone", "Time zone of printed times", "America/Chicago");
        job("season", "Season or crop year", "2026");
    }

    private static void ofFigures() {
        figures("plan", "Nitrogen planned for the field, all sources", "180 lb/ac", MARYLAND_FARM, NEBRASKA, WISCONSIN);
        figures("cap", "Most nitrogen the field may have", "200 lb/ac");
        figures(
                "earlier",
                "Earlier applications this season",
                "[{date: 2026-04-24, what: Starter, nitrogen: 12 lb/ac}]");
        figures("credits", "Nitrogen credits", "[{what: Soybeans before, nitrogen: 40 lb/ac}]");
        figures("order", "Ordered", "{uan: 1300 gal}");
        figures("tickets", "Load tickets", "[{number: 48213, date: 2026-06-02, product: uan, weight: 14380 lb}]");
        figures("price", "Price", "{uan: 1.85 USD/gal}");
    }

    private static void keptBeside() {
        beside("receipts", "Receipts and labels", MARYLAND_FARM, MARYLAND_TURF);
        beside("harvested", "Harvest date", UTAH, NRCS_590);
        beside("yield", "Yield", MARYLAND_FARM, NEBRASKA, NRCS_590);
        beside("soil_test", "Soil test, with deep soil nitrate", MARYLAND_FARM, NEBRASKA, NRCS_590);
        beside("manure_test", "Manure analysis", MARYLAND_FARM, NRCS_590);
        beside("water_test", "Nitrate in irrigation water", NEBRASKA, NRCS_590);
        beside("plan_review", "Review of the nutrient plan", WISCONSIN, NRCS_590);
    }

    private static void log(String key, String label, RecordRule... rules) {
        add(key, label, From.LOG, "the log", Kept.IN_THE_RECORD, "", rules);
    }

    private static void rig(String key, String label, String source, RecordRule... rules) {
        add(key, label, From.RIG, source, Kept.IN_THE_RECORD, "", rules);
    }

    private static void job(String key, String label, String example, RecordRule... rules) {
        add(key, label, From.JOB, "job: " + key, Kept.IN_THE_RECORD, example, rules);
    }

    private static void figures(String key, String label, String example, RecordRule... rules) {
        boolean always = key.equals("plan");
        Kept kept = always ? Kept.IN_THE_RECORD : Kept.WHERE_IT_APPLIES;
        add(key, label, From.JOB, "job: " + key, kept, example, rules);
    }

    private static void applies(String key, String label, String example, RecordRule... rules) {
        add(key, label, From.JOB, "job: " + key, Kept.WHERE_IT_APPLIES, example, rules);
    }

    private static void beside(String key, String label, RecordRule... rules) {
        add(key, label, From.JOB, "job: " + key, Kept.BESIDE_IT, "", rules);
    }

    private static void add(
            String key, String label, From from, String source, Kept kept, String example, RecordRule... rules) {
        ALL.add(new RecordField(key, label, from, source, kept, List.of(rules), example));
    }
}
