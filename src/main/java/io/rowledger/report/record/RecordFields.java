package io.rowledger.report.record;

import static io.rowledger.report.record.RecordRule.INDIANA;
import static io.rowledger.report.record.RecordRule.MARYLAND_FARM;
import static io.rowledger.report.record.RecordRule.MARYLAND_HIRE;
import static io.rowledger.report.record.RecordRule.MARYLAND_TURF;
import static io.rowledger.report.record.RecordRule.MINNESOTA_HIRE;
import static io.rowledger.report.record.RecordRule.NEBRASKA;
import static io.rowledger.report.record.RecordRule.OHIO;
import static io.rowledger.report.record.RecordRule.UTAH;
import static io.rowledger.report.record.RecordRule.WISCONSIN;

import io.rowledger.report.record.RecordField.From;
import io.rowledger.report.record.RecordField.Kept;
import io.rowledger.rig.Job;
import java.util.ArrayList;
import java.util.List;

/**
 * The facts that a nitrogen record should hold, with the published rules that ask for each. Holds every key of the job
 * block that the program reads, once, and no other; a test compares the two.
 */
public final class RecordFields {
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
     * The fields of a job's record that a published rule asks for and nobody entered. Fields that apply to some
     * work only ({@link Kept#WHERE_IT_APPLIES}) are included: a reader can't tell from a blank that they did not apply.
     */
    public static List<RecordField> notRecorded(Job job) {
        return ALL.stream()
                .filter(field -> field.from() == From.JOB && field.kept() != Kept.BESIDE_IT)
                .filter(field -> !field.rules().isEmpty())
                .filter(field -> !isRecorded(field, job))
                .toList();
    }

    /**
     * The field with this key.
     *
     * @throws java.util.NoSuchElementException if there is none
     */
    static RecordField of(String key) {
        return ALL.stream().filter(field -> field.key().equals(key)).findFirst().orElseThrow();
    }

    /** True if the job block holds the fact. */
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
        log("log_place", OHIO, MARYLAND_HIRE, UTAH);
        log("log_times", OHIO, MARYLAND_HIRE, MARYLAND_FARM, MARYLAND_TURF, INDIANA, UTAH);
        log("log_area", OHIO, MARYLAND_HIRE, MARYLAND_TURF, MINNESOTA_HIRE, NEBRASKA);
        log("log_volume", OHIO, MARYLAND_HIRE, MARYLAND_FARM, MARYLAND_TURF, MINNESOTA_HIRE, INDIANA);
        log("log_rate", OHIO, MARYLAND_FARM, MARYLAND_TURF, NEBRASKA, UTAH);
    }

    private static void ofTheRigFile() {
        rig("rig_product", "products: name", MARYLAND_HIRE, MARYLAND_FARM);
        rig(
                "rig_analysis",
                "products: analysis",
                OHIO,
                MARYLAND_HIRE,
                MARYLAND_FARM,
                MARYLAND_TURF,
                MINNESOTA_HIRE,
                INDIANA);
        rig("rig_density", "products: density, density_at");
        rig("rig_target", "products: target, unless the log has it");
        rig("rig_spacing", "rows: spacing");
        rig("rig_machine", "rig: name", UTAH);
    }

    private static void ofPeopleAndPlace() {
        job("farm", "Two Oaks");
        job("field", "North bottom", OHIO, MARYLAND_HIRE, MARYLAND_FARM, UTAH);
        job("tract", "T 1024, field 3");
        job("county", "");
        job("state", "");
        job("address", "", MARYLAND_TURF, MINNESOTA_HIRE);
        job("operator", "");
        job("landlord", "");
        job("customer", "", MINNESOTA_HIRE, INDIANA);
        job("company", "");
        job("applicator", "", OHIO, MARYLAND_TURF);
        job("certificate", "", MARYLAND_HIRE, INDIANA);
        job("certificate_holder", "", OHIO);
    }

    private static void ofTheCrop() {
        job("crop", "Corn", MARYLAND_HIRE, NEBRASKA, UTAH);
        job("stage", "V6");
        job("planted", "2026-04-28", UTAH);
        job("yield_goal", "200 bu/ac");
    }

    private static void ofTheDay() {
        job("date", "2026-06-02");
        job("soil", "Moist silt loam", OHIO);
        job("soil_moisture", "Moist from 1 in down", UTAH);
        job("weather", "Fair", OHIO, UTAH);
        job("temperature", "72 F", OHIO);
        job("wind", "8 mph from the southwest");
        job("precipitation", "None that day", OHIO);
        job("forecast", "Showers after noon", OHIO);
        applies("frozen_or_snow", "No", OHIO);
    }

    private static void ofTheWork() {
        job("method", "Coulter-injected between the rows", OHIO, UTAH);
        job("depth", "4 in");
        job("knives", "Every middle");
        applies("incorporation", "Rain next day");
        job("source", "", UTAH);
        applies("derived_from", "Urea, ammonium nitrate", MINNESOTA_HIRE);
        applies("reason", "", MARYLAND_FARM);
        job("notes", "");
        job("zone", "America/Chicago");
        job("season", "2026");
    }

    private static void ofFigures() {
        figures("plan", "180 lb/ac", MARYLAND_FARM, NEBRASKA, WISCONSIN);
        figures("cap", "200 lb/ac");
        figures("earlier", "[{date: 2026-04-24, what: Starter, nitrogen: 12 lb/ac}]");
        figures("credits", "[{what: Soybeans before, nitrogen: 40 lb/ac}]");
        figures("order", "{uan: 1300 gal}");
        figures("tickets", "[{number: 48213, date: 2026-06-02, product: uan, weight: 14380 lb}]");
        figures("price", "{uan: 1.85 USD/gal}");
    }

    private static void keptBeside() {
        beside("receipts", MARYLAND_FARM, MARYLAND_TURF);
        beside("harvested", UTAH);
        beside("yield", MARYLAND_FARM, NEBRASKA);
        beside("soil_test", MARYLAND_FARM, NEBRASKA);
        beside("manure_test", MARYLAND_FARM);
        beside("water_test", NEBRASKA);
        beside("plan_review", WISCONSIN);
    }

    private static void log(String key, RecordRule... rules) {
        add(key, From.LOG, "", Kept.IN_THE_RECORD, "", rules);
    }

    private static void rig(String key, String source, RecordRule... rules) {
        add(key, From.RIG, source, Kept.IN_THE_RECORD, "", rules);
    }

    private static void job(String key, String example, RecordRule... rules) {
        add(key, From.JOB, "job: " + key, Kept.IN_THE_RECORD, example, rules);
    }

    private static void figures(String key, String example, RecordRule... rules) {
        boolean always = key.equals("plan");
        Kept kept = always ? Kept.IN_THE_RECORD : Kept.WHERE_IT_APPLIES;
        add(key, From.JOB, "job: " + key, kept, example, rules);
    }

    private static void applies(String key, String example, RecordRule... rules) {
        add(key, From.JOB, "job: " + key, Kept.WHERE_IT_APPLIES, example, rules);
    }

    private static void beside(String key, RecordRule... rules) {
        add(key, From.JOB, "job: " + key, Kept.BESIDE_IT, "", rules);
    }

    private static void add(String key, From from, String source, Kept kept, String example, RecordRule... rules) {
        ALL.add(new RecordField(key, from, source, kept, List.of(rules), example));
    }
}
