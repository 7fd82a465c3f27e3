package io.rowledger.report.season;

import io.rowledger.rate.NutrientKg;
import io.rowledger.uncertainty.Interval;
import java.util.List;

/**
 * Many jobs as one ledger: sums over sums, nothing counted twice, and what was left out or assumed said.
 *
 * @param fields by farm and field
 * @param products every product over all jobs, by name
 * @param notes what was counted once, what may be counted twice, what is not known; one sentence each
 */
public record Season(List<SeasonField> fields, List<Product> products, List<String> notes) {
    /** Copies the lists. */
    public Season {
        fields = List.copyOf(fields);
        products = List.copyOf(products);
        notes = List.copyOf(notes);
    }

    /** A product over all jobs: its name, how many jobs had it, volume L, mass kg, nutrients. */
    public record Product(String name, int jobs, double volumeL, double massKg, NutrientKg kg) {}

    /** All jobs, field by field, in time order within each. */
    public List<SeasonJob> jobs() {
        return fields.stream().flatMap(field -> field.jobs().stream()).toList();
    }

    /** Covered ground of all jobs, m²: ground that two jobs covered counts twice. */
    public double workedM2() {
        return fields.stream().mapToDouble(SeasonField::workedM2).sum();
    }

    /**
     * Figures added up, and their bounds added up too: most of the doubt is one that jobs share (the same meters, the same tape,
     * one density), so it doesn't average out. Bounds of jobs that err each for itself would lie closer together.
     */
    static Interval sum(List<Interval> figures) {
        double value = 0;
        double low = 0;
        double high = 0;
        for (Interval one : figures) {
            value += one.value();
            low += one.low();
            high += one.high();
        }
        return new Interval(value, low, high);
    }

    /** Covered ground of all jobs with its bounds, m². */
    public Interval workedWithin() {
        return sum(jobs().stream().map(SeasonJob::coveredWithin).toList());
    }

    /** What all jobs put on, with its bounds, kg of nitrogen. */
    public Interval nitrogenWithin() {
        return sum(jobs().stream().map(SeasonJob::nitrogenWithin).toList());
    }

    /** What all jobs put on. */
    public NutrientKg kg() {
        NutrientKg sum = NutrientKg.NONE;
        for (SeasonField field : fields) {
            sum = sum.plus(field.kg());
        }
        return sum;
    }

    /** Nitrogen of earlier applications, kg. */
    public double earlierKg() {
        return fields.stream().mapToDouble(SeasonField::earlierKg).sum();
    }

    /** Nitrogen credits, kg. */
    public double creditKg() {
        return fields.stream().mapToDouble(SeasonField::creditKg).sum();
    }
}
