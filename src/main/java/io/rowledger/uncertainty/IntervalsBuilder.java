package io.rowledger.uncertainty;

import io.rowledger.coverage.Coverage;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.Rates;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.rate.RowTotals;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.track.Pass;
import io.rowledger.track.TrackQuality;
import io.rowledger.uncertainty.Intervals.OfPass;
import io.rowledger.uncertainty.Intervals.OfPassProduct;
import io.rowledger.uncertainty.Intervals.OfProduct;
import io.rowledger.uncertainty.Intervals.OfRow;
import io.rowledger.uncertainty.Intervals.OfRowProduct;
import java.util.ArrayList;
import java.util.List;

/** From what was measured to the intervals of what was computed from it: the way into this room. */
public final class IntervalsBuilder {
    private final UncertaintyInputs job;
    private final Rates rates;
    private final Coverage coverage;
    private final CoverageUncertainty ground;
    private final List<MeterUncertainty> meters = new ArrayList<>();
    private final double driftM2;
    private final double noiseM2;
    /** Standard uncertainty of the way of all passes, as a share of it. */
    private final double relativeWay;

    private IntervalsBuilder(UncertaintyInputs job, Rates rates, Coverage coverage, int threads) {
        this.job = job;
        this.rates = rates;
        this.coverage = coverage;
        ground = CoverageUncertainty.of(job, coverage, seed(job), threads);
        for (int p = 0; p < job.rig().products().size(); p++) {
            meters.add(new MeterUncertainty(job, rates.rows(), p));
        }
        double[] variances = variancesM2(job.track().quality());
        driftM2 = variances[0];
        noiseM2 = variances[1];
        relativeWay = relativeWay();
    }

    /**
     * The intervals of a job.
     *
     * @param job what was measured
     * @param rates areas and volumes computed from it
     * @param coverage ground computed from it
     * @param threads threads to use; the result is the same for any number
     */
    public static Intervals of(UncertaintyInputs job, Rates rates, Coverage coverage, int threads) {
        return new IntervalsBuilder(job, rates, coverage, threads).build();
    }

    /** The logs' digests, so that the same logs give the same draws whoever runs them. */
    private static long seed(UncertaintyInputs job) {
        long seed = 0;
        for (LogSource source : job.log().sources()) {
            String digest = source.sha256();
            seed = 31 * seed
                    + (digest.length() < 16 ? digest.hashCode() : Long.parseUnsignedLong(digest.substring(0, 16), 16));
        }
        return seed;
    }

    private Intervals build() {
        List<OfProduct> products = new ArrayList<>();
        for (int p = 0; p < meters.size(); p++) {
            products.add(product(p));
        }
        List<OfRow> rows = new ArrayList<>();
        for (int r = 0; r < rates.rows().size(); r++) {
            rows.add(row(r));
        }
        List<OfPass> passes = new ArrayList<>();
        for (int i = 0; i < job.track().passes().size(); i++) {
            passes.add(pass(i));
        }
        double nitrogenKg = 0;
        for (int p = 0; p < meters.size(); p++) {
            nitrogenKg += volumeL(p) * job.rig().products().get(p).nitrogenKgPerL();
        }
        double sweptM2 = rates.sweptAreaM2();
        UncertaintyDistribution allNitrogen = allNitrogen(nitrogenKg);
        return new Intervals(
                UncertaintyDistribution.about(sweptM2, sweptM2 * Math.hypot(relativeWidth(), relativeWay), 0)
                        .interval(sweptM2),
                ground.covered.interval(coverage.coveredAreaM2()).notBelowZero(),
                ground.overlap.interval(coverage.overlapAreaM2()).notBelowZero(),
                ground.skips.interval(coverage.skipAreaM2()).notBelowZero(),
                Interval.unknown(coverage.boundaryAreaM2()),
                allNitrogen.interval(nitrogenKg),
                perGround(allNitrogen, nitrogenKg),
                products,
                rows,
                passes,
                basis());
    }

    /** Of the whole bar, from outermost edge to outermost edge. */
    private double relativeWidth() {
        return DefaultUncertainties.toleranceM(job.rig())
                * Math.sqrt(2.0 / 3)
                / job.rig().widthM();
    }

    private double volumeL(int p) {
        return rates.volumeL(p);
    }

    private OfProduct product(int p) {
        Product product = job.rig().products().get(p);
        MeterUncertainty meter = meters.get(p);
        double volumeL = volumeL(p);
        UncertaintyDistribution volume = relative(volumeL, meter.ofBar(), meter.shared);
        double nitrogenKg = volumeL * product.nitrogenKgPerL();
        UncertaintyDistribution nitrogen =
                relative(nitrogenKg, meter.ofBar(), meter.shared, DefaultUncertainties.densityAccuracy(product));
        return new OfProduct(
                volume.interval(volumeL),
                perGround(volume, volumeL),
                nitrogen.interval(nitrogenKg),
                perGround(nitrogen, nitrogenKg));
    }

    /** Doubt of a figure with relative errors: the widest rectangle is kept, the others go into the normal part. */
    static UncertaintyDistribution relative(double value, double sigma, double... rectangles) {
        double widest = 0;
        double square = sigma * sigma;
        for (double half : rectangles) {
            widest = Math.max(widest, half);
            square += half * half / 3;
        }
        return UncertaintyDistribution.about(
                value, value * Math.sqrt(Math.max(0, square - widest * widest / 3)), value * widest);
    }

    /** All products: what their meters share adds up, the rest is each product's own. */
    private UncertaintyDistribution allNitrogen(double nitrogenKg) {
        double shared = 0;
        double square = 0;
        for (int p = 0; p < meters.size(); p++) {
            Product product = job.rig().products().get(p);
            double kg = volumeL(p) * product.nitrogenKgPerL();
            double density = DefaultUncertainties.densityAccuracy(product) * kg;
            shared += meters.get(p).shared * kg;
            double bar = kg == 0 ? 0 : meters.get(p).ofBar() * kg;
            square += bar * bar + density * density / 3;
        }
        return UncertaintyDistribution.about(nitrogenKg, Math.sqrt(square), shared);
    }

    /** Something put on the covered ground, per m². */
    private Interval perGround(UncertaintyDistribution total, double value) {
        double areaM2 = coverage.coveredAreaM2();
        UncertaintyDistribution area = ground.covered;
        if (!(areaM2 > 0) || !(area.from() > 0)) {
            return Interval.unknown(value / areaM2);
        }
        double sigma = Math.hypot(total.sigma() / areaM2, value / areaM2 * area.sigma() / areaM2);
        return new UncertaintyDistribution(value / area.to(), value / area.from(), sigma, total.rectangle() / areaM2)
                .interval(value / areaM2);
    }

    private OfRow row(int r) {
        RowTotals row = rates.rows().get(r);
        double bandM = job.strips().rightM(r) - job.strips().leftM(r);
        double width = Math.hypot(DefaultUncertainties.toleranceM(job.rig()) / Math.sqrt(6) / bandM, relativeWay);
        List<OfRowProduct> products = new ArrayList<>();
        for (int p = 0; p < meters.size(); p++) {
            MeterUncertainty meter = meters.get(p);
            double volumeL = row.products().get(p).volumeL();
            double rate = row.appliedAreaM2() > 0 ? volumeL / row.appliedAreaM2() : Double.NaN;
            double deviationPct = row.products().get(p).deviationPct();
            double ratio = Math.hypot(meter.ofRow(r), width);
            UncertaintyDistribution share = relative(1 + deviationPct / 100, ratio, meter.shared);
            products.add(new OfRowProduct(
                    relative(volumeL, meter.ofRow(r), meter.shared).interval(volumeL),
                    relative(rate, ratio, meter.shared).interval(rate),
                    Interval.about(deviationPct, 100 * share.beyond())));
        }
        double sweptM2 = row.sweptAreaM2();
        double appliedM2 = row.appliedAreaM2();
        double applied = Math.hypot(
                width, meters.stream().mapToDouble(meter -> meter.ends[r]).max().orElse(0));
        return new OfRow(
                row.row(),
                UncertaintyDistribution.about(sweptM2, sweptM2 * width, 0).interval(sweptM2),
                UncertaintyDistribution.about(appliedM2, appliedM2 * applied, 0).interval(appliedM2),
                products);
    }

    private OfPass pass(int i) {
        Pass pass = job.track().passes().get(i);
        PassTotals totals = rates.passes().get(i);
        double sweptM2 = totals.sweptAreaM2();
        double way = pass.lengthM() > 0 ? Math.sqrt(squareWayM2(pass)) / pass.lengthM() : Double.NaN;
        double area = Math.hypot(relativeWidth(), way);
        List<OfPassProduct> products = new ArrayList<>();
        for (int p = 0; p < meters.size(); p++) {
            double volumeL = totals.volumeL()[p];
            double share = volumeL / totals.meteredTargetL()[p];
            double volume = meters.get(p).ofPass(job, pass, rates.passRows().get(i), p);
            UncertaintyDistribution of = relative(share, Math.hypot(volume, area), meters.get(p).shared);
            products.add(new OfPassProduct(
                    relative(volumeL, volume, meters.get(p).shared).interval(volumeL),
                    Interval.about((share - 1) * 100, 100 * of.beyond())));
        }
        return new OfPass(
                UncertaintyDistribution.about(sweptM2, sweptM2 * area, 0).interval(sweptM2), products);
    }

    private double relativeWay() {
        double square = 0;
        double wayM = 0;
        for (Pass pass : job.track().passes()) {
            square += squareWayM2(pass);
            wayM += pass.lengthM();
        }
        return wayM > 0 ? Math.sqrt(square) / wayM : Double.NaN;
    }

    /** Variance of a pass's way: start and stop within half a record, and the drift from its start to its end. */
    private double squareWayM2(Pass pass) {
        TrackQuality quality = job.track().quality();
        double seconds = pass.endS() - pass.startS();
        double intervalM = seconds > 0 ? pass.lengthM() / seconds * quality.medianIntervalS() : 0;
        return intervalM * intervalM / 6
                + 2 * driftM2 * (1 - Math.exp(-seconds / DefaultUncertainties.DRIFT_TAU_S))
                + 2 * noiseM2;
    }

    /** Mean variance of drift and of the noise that the smoother leaves, over the job's fixes. */
    private static double[] variancesM2(TrackQuality quality) {
        int[] records = quality.recordsByFix();
        double all = 0;
        double driftM2 = 0;
        double noiseM2 = 0;
        for (int slot = 0; slot < records.length; slot++) {
            all += records[slot];
            driftM2 += records[slot] * Math.pow(DefaultUncertainties.driftM(slot), 2);
            double noiseM = records[slot] == 0 ? 0 : DefaultUncertainties.SMOOTHED_SHARE * quality.noiseM()[slot];
            noiseM2 += records[slot] * noiseM * noiseM;
        }
        return new double[] {driftM2 / all, noiseM2 / all};
    }

    private UncertaintyBudget basis() {
        Rig rig = job.rig();
        List<UncertaintyBudget.Liquid> liquids = new ArrayList<>();
        for (Product product : rig.products()) {
            liquids.add(new UncertaintyBudget.Liquid(
                    product.name(),
                    DefaultUncertainties.meterAccuracy(product),
                    !Double.isNaN(product.meterAccuracy()),
                    DefaultUncertainties.densityAccuracy(product),
                    !Double.isNaN(product.densityAccuracy())));
        }
        TrackQuality quality = job.track().quality();
        List<UncertaintyBudget.Fix> fixes = new ArrayList<>();
        for (int slot = 0; slot < quality.recordsByFix().length; slot++) {
            if (quality.recordsByFix()[slot] > 0) {
                fixes.add(new UncertaintyBudget.Fix(
                        slot, quality.recordsByFix()[slot], quality.noiseM()[slot], DefaultUncertainties.driftM(slot)));
            }
        }
        fixes.sort((a, b) -> Integer.compare(b.records(), a.records()));
        return new UncertaintyBudget(
                DefaultUncertainties.toleranceM(rig),
                !Double.isNaN(rig.toleranceM()),
                liquids,
                fixes,
                DefaultUncertainties.DRIFT_TAU_S,
                quality.medianIntervalS(),
                CoverageUncertainty.DRAWS,
                seed(job));
    }
}
