package io.rowledger.uncertainty;

import io.rowledger.coverage.Coverage;
import io.rowledger.rate.Rates;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.uncertainty.Intervals.OfProduct;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The intervals of areas that a map hands in. Their volumes have the accuracy of the meters behind the rates; how exactly the
 * areas were drawn, the file does not tell, so figures that rest on an area have no bounds. Where a rate is unknown, neither
 * has the volume.
 */
public final class AreaIntervals {
    private AreaIntervals() {}

    /** Returns the intervals of a job. */
    public static Intervals of(Rig rig, Rates rates, Coverage coverage) {
        Interval none = Interval.unknown(Double.NaN);
        List<OfProduct> products = new ArrayList<>();
        List<Intervals.OfRowProduct> ofRow = new ArrayList<>();
        List<UncertaintyBudget.Liquid> liquids = new ArrayList<>();
        double nitrogenKg = 0;
        UncertaintyDistribution all = UncertaintyDistribution.about(0, 0, 0);
        double areaM2 = coverage.coveredAreaM2();
        for (int p = 0; p < rig.products().size(); p++) {
            Product product = rig.products().get(p);
            double volumeL = rates.volumeL(p);
            double kg = volumeL == 0 ? 0 : volumeL * product.nitrogenKgPerL();
            boolean bounded = rates.unknownAreaM2(p) == 0;
            double unbounded = bounded ? 0 : Double.NaN;
            double meter = DefaultUncertainties.meterAccuracy(product);
            UncertaintyDistribution volume = UncertaintyDistribution.relative(volumeL, unbounded, meter);
            UncertaintyDistribution nitrogen = UncertaintyDistribution.relative(
                    kg, unbounded, meter, DefaultUncertainties.densityAccuracy(product));
            nitrogenKg += kg;
            // Whether the products' meters err together is unknown: their widths add up.
            all = new UncertaintyDistribution(
                    nitrogenKg, nitrogenKg, all.sigma() + nitrogen.sigma(), all.rectangle() + nitrogen.rectangle());
            products.add(new OfProduct(
                    volume.interval(volumeL).notBelowZero(),
                    Interval.unknown(volumeL / areaM2),
                    nitrogen.interval(kg).notBelowZero(),
                    Interval.unknown(kg / areaM2)));
            liquids.add(new UncertaintyBudget.Liquid(
                    product.name(),
                    meter,
                    !Double.isNaN(product.meterAccuracy()),
                    DefaultUncertainties.densityAccuracy(product),
                    !Double.isNaN(product.densityAccuracy()),
                    rates.sweptAreaM2() > 0 ? rates.unknownAreaM2(p) / rates.sweptAreaM2() : 0));
            ofRow.add(new Intervals.OfRowProduct(none, none, none));
        }
        return new Intervals(
                Interval.unknown(rates.sweptAreaM2()),
                Interval.unknown(areaM2),
                Interval.unknown(coverage.overlapAreaM2()),
                Interval.unknown(coverage.skipAreaM2()),
                Interval.unknown(coverage.boundaryAreaM2()),
                all.interval(nitrogenKg),
                Interval.unknown(nitrogenKg / areaM2),
                products,
                Collections.nCopies(rig.rows(), new Intervals.OfRow(1, none, none, ofRow)),
                List.of(),
                new UncertaintyBudget(Double.NaN, false, liquids, List.of(), Double.NaN, Double.NaN, 0, 0, List.of()));
    }
}
