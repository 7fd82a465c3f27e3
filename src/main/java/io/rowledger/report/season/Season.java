package io.rowledger.report.season;

import io.rowledger.rate.NutrientKg;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import java.util.List;

/**
 * Sums over many jobs, each job counted once.
 *
 * @param fields by farm and field
 * @param products every product over all jobs, by name
 * @param notes what was counted once, what may be counted twice, what is not known
 */
public record Season(List<SeasonField> fields, List<Product> products, List<Message> notes) {
    /** Copies the lists. */
    public Season {
        fields = List.copyOf(fields);
        products = List.copyOf(products);
        notes = List.copyOf(notes);
    }

    /** A product over all jobs: its name, number of jobs, volume L, mass kg, nutrients. */
    public record Product(String name, int jobs, double volumeL, double massKg, NutrientKg kg) {
        /** Both together, under the name of this one. */
        Product plus(Product other) {
            return new Product(
                    name, jobs + other.jobs, volumeL + other.volumeL, massKg + other.massKg, kg.plus(other.kg));
        }
    }

    /** All jobs, field by field, in time order within each. */
    public List<SeasonJob> jobs() {
        return fields.stream().flatMap(field -> field.jobs().stream()).toList();
    }

    /** Covered area of all jobs, m²: ground that two jobs covered counts twice. */
    public double coveredM2() {
        return fields.stream().mapToDouble(SeasonField::coveredM2).sum();
    }

    /**
     * Sums figures and their bounds. Bounds add up because jobs share most of the error (the same meters and tape, one
     * density), so it does not average out; bounds of independent errors would lie closer together.
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

    /** Covered area of all jobs with its bounds, m². */
    public Interval coveredWithin() {
        return sum(jobs().stream().map(SeasonJob::coveredWithin).toList());
    }

    /** Nitrogen of all jobs with its bounds, kg. */
    public Interval nitrogenWithin() {
        return sum(jobs().stream().map(SeasonJob::nitrogenWithin).toList());
    }

    /** Nutrients of all jobs. */
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
