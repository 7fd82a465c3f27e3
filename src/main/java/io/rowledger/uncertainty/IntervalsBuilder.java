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
import io.rowledger.uncertainty.VolumeBounds.Bias;
import io.rowledger.uncertainty.VolumeBounds.OnGround;
import java.util.ArrayList;
import java.util.List;

/** Computes the intervals of a job from what was measured and what was computed from it. */
public final class IntervalsBuilder {
    private final UncertaintyInputs job;
    private final Rates rates;
    private final Coverage coverage;
    /** As the log's flows have it. */
    private final CoverageUncertainty groundOfLog;
    /** With what faulty meters and unknown flows leave open. */
    private final CoverageUncertainty ground;

    private final VolumeBounds volumes;
    private final List<MeterUncertainty> meters = new ArrayList<>();
    private final double driftM2;
    private final double noiseM2;
    /** Relative standard uncertainty of the length of all passes together. */
    private final double relativeLength;

    private IntervalsBuilder(UncertaintyInputs job, Rates rates, Coverage coverage, int threads) {
        this.job = job;
        this.rates = rates;
        this.coverage = coverage;
        volumes = new VolumeBounds(job, rates);
        groundOfLog = CoverageUncertainty.of(job, coverage, seed(job), threads);
        ground = groundOfLog.widened(areaM2(true), areaM2(false));
        for (int p = 0; p < job.rig().products().size(); p++) {
            meters.add(new MeterUncertainty(job, rates.rows(), p));
        }
        double[] variances = variancesM2(job.track().quality());
        driftM2 = variances[0];
        noiseM2 = variances[1];
        relativeLength = relativeLength();
    }

    /** Area of all rows that may have been served without a flow in the log, or not served in spite of one, m². */
    private double areaM2(boolean applied) {
        double sum = 0;
        for (int r = 0; r < rates.rows().size(); r++) {
            sum += applied ? volumes.maybeAppliedM2(r) : volumes.maybeNotAppliedM2(r);
        }
        return sum;
    }

    /**
     * Returns the intervals of a job.
     *
     * @param job what was measured, and the meters in question
     * @param rates areas and volumes computed from it
     * @param coverage ground computed from it
     * @param threads threads to use; the result is the same for any number
     */
    public static Intervals of(UncertaintyInputs job, Rates rates, Coverage coverage, int threads) {
        Intervals intervals = new IntervalsBuilder(job, rates, coverage, threads).build();
        return job.log().isContradicted() ? intervals.withoutLiquid() : intervals;
    }

    /** Returns a seed made from the logs' digests, so that the same logs give the same samples. */
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
            nitrogenKg += nitrogenKg(p);
        }
        double sweptM2 = rates.sweptAreaM2();
        UncertaintyDistribution allNitrogen = allNitrogen(nitrogenKg, true);
        Interval lowest = allNitrogen(nitrogenKg, false).interval(nitrogenKg);
        return new Intervals(
                UncertaintyDistribution.about(sweptM2, sweptM2 * Math.hypot(relativeWidth(), relativeLength), 0)
                        .interval(sweptM2),
                ground.covered.interval(coverage.coveredAreaM2()).notBelowZero(),
                ground.overlap.interval(coverage.overlapAreaM2()).notBelowZero(),
                ground.skips.interval(coverage.skipAreaM2()).notBelowZero(),
                Interval.unknown(coverage.boundaryAreaM2()),
                new Interval(
                                nitrogenKg,
                                lowest.low(),
                                allNitrogen.interval(nitrogenKg).high())
                        .notBelowZero(),
                perGround(allNitrogen, nitrogenKg, nitrogenOnGround()),
                products,
                rows,
                passes,
                basis());
    }

    /** Relative standard uncertainty of the width of the whole bar, from outermost edge to outermost edge. */
    private double relativeWidth() {
        return DefaultUncertainties.toleranceM(job.rig())
                * Math.sqrt(2.0 / 3)
                / job.rig().widthM();
    }

    private double volumeL(int p) {
        return rates.volumeL(p);
    }

    /** Nitrogen of a product, kg; 0 without any volume, whatever is not known of the product. */
    private double nitrogenKg(int p) {
        return volumeL(p) == 0 ? 0 : volumeL(p) * job.rig().products().get(p).nitrogenKgPerL();
    }

    private OfProduct product(int p) {
        Product product = job.rig().products().get(p);
        MeterUncertainty meter = meters.get(p);
        double volumeL = volumeL(p);
        Bias bias = volumes.ofBar(p);
        double nitrogenKg = nitrogenKg(p);
        double kgPerL = product.nitrogenKgPerL();
        Bias biasKg = bias.times(kgPerL);
        double density = DefaultUncertainties.densityAccuracy(product);
        double ofBar = knownIf(bias, meter.ofBar());
        double rounding = meter.roundingOfBar();
        UncertaintyDistribution volume =
                UncertaintyDistribution.relative(volumeL, bias, volumeL + bias.highL(), ofBar, meter.shared, rounding);
        UncertaintyDistribution nitrogen = UncertaintyDistribution.relative(
                nitrogenKg, biasKg, nitrogenKg + biasKg.highL(), ofBar, meter.shared, rounding, density);
        return new OfProduct(
                UncertaintyDistribution.interval(volumeL, bias, ofBar, meter.shared, rounding),
                perGround(volume, volumeL, volumes.onGround(p)),
                UncertaintyDistribution.interval(nitrogenKg, biasKg, ofBar, meter.shared, rounding, density),
                perGround(nitrogen, nitrogenKg, volumes.onGround(p).times(kgPerL)));
    }

    /**
     * All products: what their meters share adds up, the rest is each product's own.
     *
     * @param largest true for errors of the larger end, false for those of the smaller
     */
    private UncertaintyDistribution allNitrogen(double nitrogenKg, boolean largest) {
        double shared = 0;
        double square = 0;
        double low = 0;
        double high = 0;
        for (int p = 0; p < meters.size(); p++) {
            Product product = job.rig().products().get(p);
            double kg = nitrogenKg(p);
            Bias bias = volumes.ofBar(p);
            boolean biased = bias.lowL() != 0 || bias.highL() != 0;
            Bias biasKg = biased ? bias.times(product.nitrogenKgPerL()) : Bias.NONE;
            double endKg = kg + (largest ? biasKg.highL() : biasKg.lowL());
            double density = DefaultUncertainties.densityAccuracy(product) * endKg;
            double rounding = meters.get(p).roundingOfBar() * endKg;
            double bar = kg == 0 ? 0 : meters.get(p).ofBar() * endKg;
            shared += meters.get(p).shared * endKg;
            low += biasKg.lowL();
            high += biasKg.highL();
            square += bar * bar + (density * density + rounding * rounding) / 3 + biasKg.sigmaL() * biasKg.sigmaL();
        }
        return new UncertaintyDistribution(nitrogenKg + low, nitrogenKg + high, Math.sqrt(square), shared);
    }

    private OnGround nitrogenOnGround() {
        OnGround all = OnGround.NONE;
        for (int p = 0; p < meters.size(); p++) {
            OnGround of = volumes.onGround(p);
            all = of.equals(OnGround.NONE)
                    ? all
                    : all.plus(of.times(job.rig().products().get(p).nitrogenKgPerL()));
        }
        return all;
    }

    /**
     * Something put on the covered ground, per m². By hand: 10 L metered on 100 m², and a dead meter behind which 1 L may lie on
     * another 10 m²: 10/100 or 11/110, which is the same rate; held against each other by themselves, the ends would be 10/110 and
     * 11/100.
     */
    private Interval perGround(UncertaintyDistribution total, double value, OnGround bias) {
        double areaM2 = coverage.coveredAreaM2();
        UncertaintyDistribution area = ground.covered;
        if (!(areaM2 > 0) || !(area.from() > 0)) {
            return Interval.unknown(value / areaM2);
        }
        double sigma = Math.hypot(total.sigma() / areaM2, value / areaM2 * area.sigma() / areaM2);
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (double with : new double[] {0, 1}) {
            for (double without : new double[] {0, 1}) {
                double onIt = value + with * bias.withAppliedL() + without * bias.withNotAppliedL();
                double changeM2 = with * areaM2(true) - without * areaM2(false);
                low = Math.min(low, (onIt + bias.lowL()) / (groundOfLog.covered.to() + changeM2));
                high = Math.max(
                        high, (onIt + bias.highL()) / Math.max(area.from(), groundOfLog.covered.from() + changeM2));
            }
        }
        return new UncertaintyDistribution(low, high, sigma, total.rectangle() / areaM2)
                .interval(value / areaM2)
                .notBelowZero();
    }

    private OfRow row(int r) {
        RowTotals row = rates.rows().get(r);
        double bandM = job.strips().rightM(r) - job.strips().leftM(r);
        double width = Math.hypot(DefaultUncertainties.toleranceM(job.rig()) / Math.sqrt(6) / bandM, relativeLength);
        double appliedM2 = row.appliedAreaM2();
        List<OfRowProduct> products = new ArrayList<>();
        for (int p = 0; p < meters.size(); p++) {
            MeterUncertainty meter = meters.get(p);
            double volumeL = row.products().get(p).volumeL();
            double rate = appliedM2 > 0 ? volumeL / appliedM2 : Double.NaN;
            double targetL = row.products().get(p).meteredTargetL();
            double ratio = Math.hypot(meter.ofRow(r), width);
            Bias all = volumes.ofRow(p, r);
            Bias known = volumes.ofRowWhereKnown(p, r);
            products.add(new OfRowProduct(
                    UncertaintyDistribution.interval(
                            volumeL, all, meter.ofRow(r), meter.shared, meter.roundingOfRow(r)),
                    UncertaintyDistribution.interval(
                            rate, known.times(1 / appliedM2), ratio, meter.shared, meter.roundingOfRow(r)),
                    deviation(volumeL, targetL, ratio, known, meter.shared, meter.roundingOfRow(r))));
        }
        double sweptM2 = row.sweptAreaM2();
        double applied = Math.hypot(
                width, meters.stream().mapToDouble(meter -> meter.ends[r]).max().orElse(0));
        return new OfRow(
                row.row(),
                UncertaintyDistribution.about(sweptM2, sweptM2 * width, 0).interval(sweptM2),
                UncertaintyDistribution.about(appliedM2, appliedM2 * applied, 0)
                        .widened(-volumes.maybeNotAppliedM2(r), volumes.maybeAppliedM2(r), 0)
                        .interval(appliedM2)
                        .notBelowZero(),
                products);
    }

    /** Deviation of a volume from its target volume, percent. */
    private static Interval deviation(double volumeL, double targetL, double sigma, Bias bias, double... rectangles) {
        double share = targetL > 0 ? volumeL / targetL : Double.NaN;
        Interval of = UncertaintyDistribution.interval(share, bias.times(1 / targetL), sigma, rectangles);
        return new Interval((share - 1) * 100, (of.low() - 1) * 100, (of.high() - 1) * 100);
    }

    private OfPass pass(int i) {
        Pass pass = job.track().passes().get(i);
        PassTotals totals = rates.passes().get(i);
        double sweptM2 = totals.sweptAreaM2();
        double length = pass.lengthM() > 0 ? Math.sqrt(lengthVarianceM2(pass)) / pass.lengthM() : Double.NaN;
        double area = Math.hypot(relativeWidth(), length);
        List<OfPassProduct> products = new ArrayList<>();
        for (int p = 0; p < meters.size(); p++) {
            double volumeL = totals.volumeL()[p];
            double shared = meters.get(p).shared;
            Bias all = volumes.ofPass(p, i);
            double volume = knownIf(
                    all, meters.get(p).ofPass(job, pass, rates.passRows().get(i), p));
            double rounding = meters.get(p).roundingOfPass(i, volumeL);
            products.add(new OfPassProduct(
                    UncertaintyDistribution.interval(volumeL, all, volume, shared, rounding),
                    deviation(
                            volumeL,
                            totals.meteredTargetL()[p],
                            Math.hypot(volume, area),
                            volumes.ofPassWhereKnown(p, i),
                            shared,
                            rounding)));
        }
        return new OfPass(
                UncertaintyDistribution.about(sweptM2, sweptM2 * area, 0).interval(sweptM2), products);
    }

    /** Where nothing was metered, but something may have flowed, a meter's relative error changes nothing. */
    private static double knownIf(Bias bias, double sigma) {
        return Double.isNaN(sigma) && bias.highL() > 0 ? 0 : sigma;
    }

    private double relativeLength() {
        double square = 0;
        double lengthM = 0;
        for (Pass pass : job.track().passes()) {
            square += lengthVarianceM2(pass);
            lengthM += pass.lengthM();
        }
        return lengthM > 0 ? Math.sqrt(square) / lengthM : Double.NaN;
    }

    /** Variance of a pass's length: start and stop within half a record, and the drift from its start to its end, m². */
    private double lengthVarianceM2(Pass pass) {
        TrackQuality quality = job.track().quality();
        double seconds = pass.endS() - pass.startS();
        double intervalM = seconds > 0 ? pass.lengthM() / seconds * quality.medianIntervalS() : 0;
        return intervalM * intervalM / 6
                + 2 * driftM2 * (1 - Math.exp(-seconds / DefaultUncertainties.DRIFT_TAU_S))
                + 2 * noiseM2;
    }

    /** Returns the mean variances of drift and of the noise that the smoother leaves, over the job's fixes, m². */
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
        for (int p = 0; p < rig.products().size(); p++) {
            Product product = rig.products().get(p);
            liquids.add(new UncertaintyBudget.Liquid(
                    product.name(),
                    DefaultUncertainties.meterAccuracy(product),
                    !Double.isNaN(product.meterAccuracy()),
                    DefaultUncertainties.densityAccuracy(product),
                    !Double.isNaN(product.densityAccuracy()),
                    rates.sweptAreaM2() > 0 ? rates.unknownAreaM2(p) / rates.sweptAreaM2() : 0));
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
                job.log().isTimed() ? quality.medianIntervalS() : Double.NaN,
                CoverageUncertainty.SAMPLES,
                seed(job),
                job.faults());
    }
}
