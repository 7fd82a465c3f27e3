package io.rowledger.uncertainty;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The intervals of a job: in {@value #LEVEL_PCT} of 100 jobs like it the truth should lie within them.
 *
 * @param sweptAreaM2 all outlets, m²
 * @param coveredAreaM2 m²
 * @param overlapAreaM2 m²
 * @param skipAreaM2 m²
 * @param boundaryAreaM2 without bounds, because the boundary is taken as drawn; NaN without one
 * @param nitrogenKg all products together, kg; NaN if a density or a volume is not known
 * @param nitrogenKgPerM2 all products together over the covered ground, kg/m²
 * @param products per product, in rig order
 * @param rows per outlet, from the left
 * @param passes per pass, in order
 * @param basis what they rest on
 */
public record Intervals(
        Interval sweptAreaM2,
        Interval coveredAreaM2,
        Interval overlapAreaM2,
        Interval skipAreaM2,
        Interval boundaryAreaM2,
        Interval nitrogenKg,
        Interval nitrogenKgPerM2,
        List<OfProduct> products,
        List<OfRow> rows,
        List<OfPass> passes,
        UncertaintyBudget basis) {
    /** Coverage probability of an interval, percent. */
    public static final int LEVEL_PCT = 90;

    /** Copies the lists. */
    public Intervals {
        products = List.copyOf(products);
        rows = List.copyOf(rows);
        passes = List.copyOf(passes);
    }

    /**
     * One product over the job.
     *
     * @param volumeL metered while working, L
     * @param meanRateLPerM2 volume ÷ covered area, L/m²
     * @param nitrogenKg volume × density × N fraction, kg
     * @param nitrogenKgPerM2 nitrogen ÷ covered area, kg/m²
     */
    public record OfProduct(Interval volumeL, Interval meanRateLPerM2, Interval nitrogenKg, Interval nitrogenKgPerM2) {}

    /**
     * One outlet.
     *
     * @param row from 1 at the left
     * @param sweptAreaM2 m²
     * @param appliedAreaM2 m²
     * @param products per product, in rig order
     */
    public record OfRow(int row, Interval sweptAreaM2, Interval appliedAreaM2, List<OfRowProduct> products) {
        /** Copies the products. */
        public OfRow {
            products = List.copyOf(products);
        }
    }

    /**
     * One product of one outlet.
     *
     * @param volumeL metered while working, L
     * @param meanRateLPerM2 volume ÷ applied area, L/m²
     * @param deviationPct volume against target volume, percent
     */
    public record OfRowProduct(Interval volumeL, Interval meanRateLPerM2, Interval deviationPct) {}

    /**
     * One pass, all outlets.
     *
     * @param sweptAreaM2 m²
     * @param products per product, in rig order
     */
    public record OfPass(Interval sweptAreaM2, List<OfPassProduct> products) {
        /** Copies the products. */
        public OfPass {
            products = List.copyOf(products);
        }
    }

    /**
     * One product of one pass.
     *
     * @param volumeL metered while working, L
     * @param deviationPct volume against target volume, percent
     */
    public record OfPassProduct(Interval volumeL, Interval deviationPct) {}

    /** Returns the same without bounds of volumes, rates and nitrogen: the log contradicts itself about how much flowed. */
    Intervals withoutLiquid() {
        return new Intervals(
                sweptAreaM2,
                coveredAreaM2,
                overlapAreaM2,
                skipAreaM2,
                boundaryAreaM2,
                nitrogenKg.unbounded(),
                nitrogenKgPerM2.unbounded(),
                products.stream()
                        .map(product -> new OfProduct(
                                product.volumeL.unbounded(),
                                product.meanRateLPerM2.unbounded(),
                                product.nitrogenKg.unbounded(),
                                product.nitrogenKgPerM2.unbounded()))
                        .toList(),
                rows.stream()
                        .map(row -> new OfRow(
                                row.row,
                                row.sweptAreaM2,
                                row.appliedAreaM2,
                                row.products.stream()
                                        .map(product -> new OfRowProduct(
                                                product.volumeL.unbounded(),
                                                product.meanRateLPerM2.unbounded(),
                                                product.deviationPct.unbounded()))
                                        .toList()))
                        .toList(),
                passes.stream()
                        .map(pass -> new OfPass(
                                pass.sweptAreaM2,
                                pass.products.stream()
                                        .map(product -> new OfPassProduct(
                                                product.volumeL.unbounded(), product.deviationPct.unbounded()))
                                        .toList()))
                        .toList(),
                basis);
    }

    /** Returns intervals without any bounds. */
    public static Intervals unknown(int rows, int passes, int products) {
        Interval none = Interval.unknown(Double.NaN);
        List<OfProduct> ofProducts = new ArrayList<>();
        List<OfRowProduct> ofRowProducts = new ArrayList<>();
        List<OfPassProduct> ofPassProducts = new ArrayList<>();
        for (int p = 0; p < products; p++) {
            ofProducts.add(new OfProduct(none, none, none, none));
            ofRowProducts.add(new OfRowProduct(none, none, none));
            ofPassProducts.add(new OfPassProduct(none, none));
        }
        List<OfRow> ofRows = new ArrayList<>();
        for (int r = 1; r <= rows; r++) {
            ofRows.add(new OfRow(r, none, none, ofRowProducts));
        }
        return new Intervals(
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                ofProducts,
                ofRows,
                Collections.nCopies(passes, new OfPass(none, ofPassProducts)),
                UncertaintyBudget.NOTHING);
    }
}
