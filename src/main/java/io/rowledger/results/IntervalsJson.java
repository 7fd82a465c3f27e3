package io.rowledger.results;

import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import io.rowledger.report.findings.FindingUncertainty;
import io.rowledger.rig.Product;
import io.rowledger.track.Pass;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * {@code field.intervals} of the summary: bounds of the figures of the same names, and the errors they come from.
 *
 * @param levelPct coverage of the intervals, percent
 * @param budget sizes of the errors
 */
record IntervalsJson(
        int levelPct,
        @OrNull @Nullable Bounds sweptAreaM2,
        @OrNull @Nullable Bounds coveredAreaM2,
        @OrNull @Nullable Bounds overlapAreaM2,
        @OrNull @Nullable Bounds skipAreaM2,
        @OrNull @Nullable Bounds boundaryAreaM2,
        @OrNull @Nullable Bounds nitrogenKg,
        @OrNull @Nullable Bounds nitrogenKgPerHa,
        Map<String, OfProduct> products,
        List<OfRow> rows,
        List<OfPass> passes,
        Budget budget) {

    static IntervalsJson of(Intervals in, List<Product> products, List<Pass> ofTrack, LogTable log) {
        List<OfPass> passes = new ArrayList<>();
        for (int i = 0; i < in.passes().size(); i++) {
            passes.add(OfPass.of(products, ofTrack.get(i).number(), in.passes().get(i)));
        }
        return new IntervalsJson(
                Intervals.LEVEL_PCT,
                Bounds.area(in.sweptAreaM2()),
                Bounds.area(in.coveredAreaM2()),
                Bounds.area(in.overlapAreaM2()),
                Bounds.area(in.skipAreaM2()),
                Bounds.area(in.boundaryAreaM2()),
                Bounds.thousandths(in.nitrogenKg()),
                Bounds.perHa(in.nitrogenKgPerM2()),
                in.products().isEmpty()
                        ? Map.of()
                        : ByProduct.of(products, p -> OfProduct.of(in.products().get(p))),
                (log.isAreas() ? List.<Intervals.OfRow>of() : in.rows())
                        .stream().map(row -> OfRow.of(row, products, log)).toList(),
                passes,
                Budget.of(products, in.basis()));
    }

    /** Bounds, rounded to their figure's decimals. */
    record Bounds(
            @Decimals(JsonNumbers.MAX_DECIMALS) double low,
            @Decimals(JsonNumbers.MAX_DECIMALS) double high) {
        /** Null where nothing can be told. */
        static @Nullable Bounds of(Interval interval, double factor, int decimals) {
            return interval.known()
                    ? new Bounds(
                            JsonNumbers.rounded(interval.low() * factor, decimals),
                            JsonNumbers.rounded(interval.high() * factor, decimals))
                    : null;
        }

        static @Nullable Bounds area(Interval interval) {
            return of(interval, 1, JsonNumbers.AREA_M2);
        }

        /** Liters, kilograms and percent have three decimals. */
        static @Nullable Bounds thousandths(Interval interval) {
            return of(interval, 1, JsonNumbers.VOLUME_L);
        }

        static @Nullable Bounds perHa(Interval interval) {
            return of(interval, JobJson.perHa(1), JsonNumbers.RATE);
        }

        static @Nullable Bounds ofProductNitrogen(Intervals intervals, int p) {
            return intervals.products().isEmpty()
                    ? null
                    : thousandths(intervals.products().get(p).nitrogenKg());
        }
    }

    /** One product over the whole job. */
    record OfProduct(
            @OrNull @Nullable Bounds volumeL,
            @OrNull @Nullable Bounds meanRateLPerHa,
            @OrNull @Nullable Bounds nitrogenKg,
            @OrNull @Nullable Bounds nitrogenKgPerHa) {
        static OfProduct of(Intervals.OfProduct product) {
            return new OfProduct(
                    Bounds.thousandths(product.volumeL()),
                    Bounds.perHa(product.meanRateLPerM2()),
                    Bounds.thousandths(product.nitrogenKg()),
                    Bounds.perHa(product.nitrogenKgPerM2()));
        }
    }

    /** One row. */
    record OfRow(
            int row,
            @OrNull @Nullable Bounds sweptAreaM2,
            @OrNull @Nullable Bounds appliedAreaM2,
            Map<String, OfRowProduct> products) {
        static OfRow of(Intervals.OfRow row, List<Product> products, LogTable log) {
            return new OfRow(
                    row.row(),
                    Bounds.area(row.sweptAreaM2()),
                    Bounds.area(row.appliedAreaM2()),
                    row.products().isEmpty()
                            ? Map.of()
                            : ByProduct.of(
                                    products,
                                    p -> log.metering(p) != Metering.PER_ROW
                                            ? new OfRowProduct(null, null, null)
                                            : OfRowProduct.of(row.products().get(p))));
        }
    }

    /** One product of a row. */
    record OfRowProduct(
            @OrNull @Nullable Bounds volumeL,
            @OrNull @Nullable Bounds meanRateLPerHa,
            @OrNull @Nullable Bounds deviationPct) {
        static OfRowProduct of(Intervals.OfRowProduct product) {
            return new OfRowProduct(
                    Bounds.thousandths(product.volumeL()),
                    Bounds.perHa(product.meanRateLPerM2()),
                    Bounds.thousandths(product.deviationPct()));
        }
    }

    /** One pass. */
    record OfPass(int pass, @OrNull @Nullable Bounds sweptAreaM2, Map<String, OfPassProduct> products) {
        static OfPass of(List<Product> products, int number, Intervals.OfPass pass) {
            return new OfPass(
                    number,
                    Bounds.area(pass.sweptAreaM2()),
                    pass.products().isEmpty()
                            ? Map.of()
                            : ByProduct.of(
                                    products,
                                    p -> OfPassProduct.of(pass.products().get(p))));
        }
    }

    /** One product of a pass. */
    record OfPassProduct(
            @OrNull @Nullable Bounds volumeL,
            @OrNull @Nullable Bounds deviationPct) {
        static OfPassProduct of(Intervals.OfPassProduct product) {
            return new OfPassProduct(Bounds.thousandths(product.volumeL()), Bounds.thousandths(product.deviationPct()));
        }
    }

    /** A finding. */
    record OfFinding(
            @OrNull @Nullable Bounds areaM2,
            @OrNull @Nullable Bounds volumeL,
            @OrNull @Nullable Bounds nitrogenKg) {
        static OfFinding of(FindingUncertainty of) {
            return new OfFinding(
                    Bounds.area(of.areaM2()), Bounds.thousandths(of.volumeL()), Bounds.thousandths(of.nitrogenKg()));
        }
    }

    /**
     * Sizes of the errors (uncertainty budget). {@code ...Given} is false for a default of the program.
     *
     * @param seed of the random samples, hex
     */
    record Budget(
            @Decimals(4) double setupToleranceM,
            boolean setupToleranceGiven,
            Map<String, Liquid> products,
            List<Fix> fixes,
            @Decimals(0) double driftTimeConstantS,
            @Decimals(3) double recordIntervalS,
            int draws,
            String seed) {
        static Budget of(List<Product> products, UncertaintyBudget budget) {
            return new Budget(
                    budget.toleranceM(),
                    budget.toleranceGiven(),
                    budget.liquids().isEmpty()
                            ? Map.of()
                            : ByProduct.of(
                                    products, p -> Liquid.of(budget.liquids().get(p))),
                    budget.fixes().stream().map(Fix::of).toList(),
                    budget.driftTauS(),
                    budget.intervalS(),
                    budget.samples(),
                    Long.toUnsignedString(budget.seed(), 16));
        }
    }

    /** Errors of meter and density of one product. */
    record Liquid(
            @Decimals(JsonNumbers.PCT) double meterAccuracyPct,
            boolean meterAccuracyGiven,
            @Decimals(JsonNumbers.PCT) double densityAccuracyPct,
            boolean densityAccuracyGiven) {
        static Liquid of(UncertaintyBudget.Liquid liquid) {
            return new Liquid(
                    liquid.meterAccuracy() * 100,
                    liquid.meterGiven(),
                    liquid.densityAccuracy() * 100,
                    liquid.densityGiven());
        }
    }

    /** Errors of one type of fix (NMEA 0183 quality digit); null for records that don't name theirs. */
    record Fix(
            @OrNull @Nullable Integer fix,
            int records,
            @Decimals(4) double noiseM,
            @Decimals(4) double driftM) {
        private static final int MAX_DIGIT = 8;

        static Fix of(UncertaintyBudget.Fix fix) {
            return new Fix(fix.digit() > MAX_DIGIT ? null : fix.digit(), fix.records(), fix.noiseM(), fix.driftM());
        }
    }
}
