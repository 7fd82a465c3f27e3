package io.rowledger.rate;

import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.rig.Job;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import java.util.ArrayList;
import java.util.List;

/**
 * Nutrients of a job, and with what came before it.
 *
 * <p>Of product i with volume V (L), density ρ (kg/L) and mass fraction x of a nutrient: mass m = ρ·V, nutrient x·m; the
 * products add up. Per area means per covered area A, each place counted once. What came before is taken as spread evenly
 * over that ground: e kg/m² are e·A kg. A product without density or analysis leaves the total unknown (NaN) rather than
 * short; {@link #missing} says what to write. Density is never corrected for temperature: it is the one entered.
 *
 * @param products each product, in rig order
 * @param jobKg all products together
 * @param earlierKg earlier applications on the covered ground
 * @param creditKg nitrogen credits on the covered ground, kg
 * @param areaM2 covered area, m²
 * @param missing why the job's nitrogen is not known, one sentence each; empty if it is
 */
public record Nutrients(
        List<OfProduct> products,
        NutrientKg jobKg,
        NutrientKg earlierKg,
        double creditKg,
        double areaM2,
        List<String> missing) {
    /** Copies the lists. */
    public Nutrients {
        products = List.copyOf(products);
        missing = List.copyOf(missing);
    }

    /**
     * One product of the job.
     *
     * @param product the product
     * @param volumeL metered while working, L; NaN if the log does not tell
     * @param massKg its mass; NaN without a density
     * @param kg its nutrients; NaN without density or analysis
     */
    public record OfProduct(Product product, double volumeL, double massKg, NutrientKg kg) {}

    /** Sums a job's rows over this covered area, m². */
    public static Nutrients of(Rig rig, Rates rates, double coveredAreaM2) {
        List<OfProduct> products = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        NutrientKg jobKg = NutrientKg.NONE;
        for (int p = 0; p < rig.products().size(); p++) {
            double volumeL = rates.volumeL(p);
            OfProduct one = ofVolume(rig.products().get(p), volumeL);
            products.add(one);
            jobKg = jobKg.plus(one.kg());
            if (Double.isNaN(one.kg().nitrogenKg())) {
                missing.add(
                        Double.isNaN(volumeL)
                                ? "The log has no flow of " + one.product().name()
                                        + ", so its nitrogen and the job's are not known."
                                : lacks(one.product()));
            }
        }
        return new Nutrients(
                products,
                jobKg,
                earlier(rig.job(), coveredAreaM2),
                creditKgPerM2(rig.job()) * coveredAreaM2,
                coveredAreaM2,
                missing);
    }

    /** What a volume (L) of a product holds. Nothing holds nothing, whatever is unknown of it. */
    public static OfProduct ofVolume(Product product, double volumeL) {
        if (volumeL == 0) {
            return new OfProduct(product, 0, 0, NutrientKg.NONE);
        }
        double massKg = volumeL * product.densityKgPerL();
        NutrientKg kg = new NutrientKg(
                massKg * product.nitrogenFraction(),
                massKg * product.phosphateFraction(),
                massKg * product.potashFraction(),
                massKg * product.sulfurFraction());
        return new OfProduct(product, volumeL, massKg, kg);
    }

    /** Nitrogen of this job per covered area, kg/m². */
    public double jobNitrogenKgPerM2() {
        return jobKg.nitrogenKg() / areaM2;
    }

    /** Nitrogen of this job, earlier applications and credits together, kg. */
    public double totalNitrogenKg() {
        return jobKg.nitrogenKg() + earlierKg.nitrogenKg() + creditKg;
    }

    /** The same per covered area, kg/m²: what is held against plan and cap. */
    public double totalNitrogenKgPerM2() {
        return totalNitrogenKg() / areaM2;
    }

    /** Earlier applications and credits, kg/m² of nitrogen: what every place had beside this job. */
    public static double beforeKgPerM2(Job job) {
        double sum = creditKgPerM2(job);
        for (EarlierApplication earlier : job.earlier()) {
            sum += earlier.nitrogenKgPerM2();
        }
        return sum;
    }

    private static double creditKgPerM2(Job job) {
        double sum = 0;
        for (Credit credit : job.credits()) {
            sum += credit.nitrogenKgPerM2();
        }
        return sum;
    }

    private static NutrientKg earlier(Job job, double areaM2) {
        NutrientKg sum = NutrientKg.NONE;
        for (EarlierApplication earlier : job.earlier()) {
            sum = sum.plus(new NutrientKg(
                    earlier.nitrogenKgPerM2() * areaM2,
                    earlier.phosphateKgPerM2() * areaM2,
                    earlier.potashKgPerM2() * areaM2,
                    earlier.sulfurKgPerM2() * areaM2));
        }
        return sum;
    }

    private static String lacks(Product product) {
        boolean density = Double.isNaN(product.densityKgPerL());
        boolean analysis = Double.isNaN(product.nitrogenFraction());
        String what = density && analysis ? "density and no analysis" : density ? "density" : "analysis";
        return product.name() + " has no " + what + " in the rig file, so its nitrogen and the job's are not known.";
    }
}
