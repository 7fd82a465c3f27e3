package io.rowledger.report;

import io.rowledger.rate.NutrientKg;
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
