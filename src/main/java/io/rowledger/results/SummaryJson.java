package io.rowledger.results;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobClock;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.coverage.sections.ShutOffScore;
import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.Nutrients;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.rate.RowTotals;
import io.rowledger.rate.VolumeBalance;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingProducts;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.report.review.WhatIfFigures;
import io.rowledger.rig.Product;
import io.rowledger.track.Pass;
import io.rowledger.units.Factor;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** {@code summary.json}: every figure of one job in SI, units in the names, {@code null} where unknown. */
public record SummaryJson(
        String schema,
        String programVersion,
        List<Input> inputs,
        JobJson job,
        Field field,
        List<Row> rows,
        List<OnePass> passes,
        List<FindingJson.InSummary> findings,
        SectionControl sectionControl,
        SetupJson.Summary setup,
        List<ActionJson> actions,
        List<String> notes) {

    /** A log: its name as given, lower-case hex SHA-256, records in it and records used. */
    record Input(String file, @JsonProperty("sha256") String sha256, int records, int used, Dropped dropped) {
        static Input of(LogSource source) {
            LogSource.Dropped d = source.dropped();
            return new Input(
                    source.file(),
                    source.sha256(),
                    source.records(),
                    source.used(),
                    new Dropped(d.noFix(), d.duplicate(), d.outOfOrder(), d.jump(), d.frozen(), d.unreadable()));
        }
    }

    /** Records that were not used, by reason. */
    record Dropped(int noFix, int duplicate, int outOfOrder, int jump, int frozen, int unreadable) {}

    /** The whole job. */
    record Field(
            @OrNull @Nullable Instant start,
            @OrNull @Nullable Instant end,
            @Decimals(JsonNumbers.AREA_M2) double sweptAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double coveredAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double overlapAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double skipAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double boundaryAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double outsideBoundaryAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double unsettledAreaM2,
            Map<String, FieldProduct> products,
            @OrNull @Nullable List<SetbackJson> setbacks,
            @OrNull @Nullable PrescriptionJson prescription,
            IntervalsJson intervals,
            WhatIfJson whatIf) {
        static Field of(Analysis a) {
            Coverage c = a.coverage();
            List<Product> products = a.rig().products();
            return new Field(
                    JsonNumbers.instant(
                            JobTimes.of(a.track(), a.log(), JobClock.zone(a)).startS()),
                    JsonNumbers.instant(
                            JobTimes.of(a.track(), a.log(), JobClock.zone(a)).endS()),
                    a.rates().sweptAreaM2(),
                    c.coveredAreaM2(),
                    c.overlapAreaM2(),
                    c.skipAreaM2(),
                    c.boundaryAreaM2(),
                    c.outsideBoundaryM2(),
                    a.log().isAreas() ? Double.NaN : a.rates().unsettledAreaM2(),
                    ByProduct.of(products, p -> FieldProduct.of(a, p)),
                    SetbackJson.all(a.setbacks(), products, a.track().plane()),
                    PrescriptionJson.of(a.zones(), products),
                    IntervalsJson.of(a.intervals(), products, a.track().passes(), a.log()),
                    WhatIfJson.of(
                            a.whatIf(),
                            new WhatIfFigures(
                                    a.rig(), c, a.intervals(), a.rates().sweptAreaM2()),
                            a.rig()));
        }
    }

    /** One product over the whole job. */
    record FieldProduct(
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.VOLUME_L) double targetVolumeL,
            @Decimals(JsonNumbers.RATE) double meanRateLPerHa,
            String name,
            @Decimals(JsonNumbers.MASS_KG) double massKg,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKgLow,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKgHigh,
            @Decimals(JsonNumbers.MASS_KG) double phosphateKg,
            @Decimals(JsonNumbers.MASS_KG) double potashKg,
            @Decimals(JsonNumbers.MASS_KG) double sulfurKg,
            @Decimals(JsonNumbers.PCT) double cvPct,
            @Decimals(JsonNumbers.PCT) double within5Pct,
            @Decimals(JsonNumbers.PCT) double within10Pct,
            @Decimals(JsonNumbers.PCT) double within20Pct,
            @Decimals(JsonNumbers.PCT) double under10Pct,
            @Decimals(JsonNumbers.PCT) double over10Pct,
            @Decimals(JsonNumbers.VOLUME_L) double gridVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double logVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double outsideWorkVolumeL,
            OutsideWork outsideWork,
            // One more digit than other percentages: the law is a tenth of a percent.
            @Decimals(4) double conservationErrorPct) {
        static FieldProduct of(Analysis a, int p) {
            Product product = a.rig().products().get(p);
            ProductSums sums = ProductSums.of(a.rates(), a.coverage(), p);
            ReceivedStatistics received = a.coverage().received().get(p);
            VolumeBalance balance = VolumeBalance.of(a.log(), a.track(), a.delivery(), p);
            Nutrients.OfProduct put = Nutrients.ofVolume(product, sums.volumeL());
            IntervalsJson.Bounds nitrogen = IntervalsJson.Bounds.ofProductNitrogen(a.intervals(), p);
            return new FieldProduct(
                    sums.volumeL(),
                    sums.targetVolumeL(),
                    received.meanRateLPerM2() * Factor.SQUARE_METRES_PER_HECTARE,
                    put.product().name(),
                    put.massKg(),
                    put.kg().nitrogenKg(),
                    nitrogen == null ? Double.NaN : nitrogen.low(),
                    nitrogen == null ? Double.NaN : nitrogen.high(),
                    put.kg().phosphateKg(),
                    put.kg().potashKg(),
                    put.kg().sulfurKg(),
                    received.cvPct(),
                    received.within5Pct(),
                    received.within10Pct(),
                    received.within20Pct(),
                    received.underPct(),
                    received.overPct(),
                    received.gridVolumeL(),
                    received.logVolumeL(),
                    balance.outsideWorkL(),
                    OutsideWork.of(balance),
                    received.conservationError() * 100);
        }
    }

    /** The parts of the volume outside the work. */
    record OutsideWork(
            @Decimals(JsonNumbers.VOLUME_L) double liftedVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double standingVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double creepingVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double backingVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double gapVolumeL) {
        static OutsideWork of(VolumeBalance b) {
            return new OutsideWork(b.liftedL(), b.standingL(), b.creepingL(), b.backingL(), b.gapL());
        }
    }

    /** One row over the whole job. */
    record Row(
            int row,
            @Decimals(JsonNumbers.AREA_M2) double sweptAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double appliedAreaM2,
            @Decimals(JsonNumbers.PCT) double turnErrorMeanAbsPct,
            @Decimals(JsonNumbers.PCT) double turnErrorMaxOverPct,
            @Decimals(JsonNumbers.PCT) double turnErrorMaxUnderPct,
            @Decimals(JsonNumbers.PCT) double turnErrorRemainingMeanAbsPct,
            @Decimals(JsonNumbers.PCT) double turnErrorRemainingMaxOverPct,
            @Decimals(JsonNumbers.PCT) double turnErrorRemainingMaxUnderPct,
            Map<String, RowProduct> products) {
        static Row of(RowTotals row, List<Product> products, LogTable log) {
            RowTotals.TurnError remaining = row.turnRemaining();
            return new Row(
                    row.row(),
                    row.sweptAreaM2(),
                    row.appliedAreaM2(),
                    row.turn().meanAbs() * 100,
                    row.turn().maxOver() * 100,
                    row.turn().maxUnder() * 100,
                    remaining.meanAbs() * 100,
                    remaining.maxOver() * 100,
                    remaining.maxUnder() * 100,
                    ByProduct.of(products, p -> RowProduct.of(row, p, log.metering(p))));
        }
    }

    /** One product of a row: metered while working, and target rate times swept area. */
    record RowProduct(
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.VOLUME_L) double targetVolumeL,
            @Decimals(JsonNumbers.RATE) double meanRateLPerHa,
            @Decimals(JsonNumbers.PCT) double deviationPct) {
        static RowProduct of(RowTotals row, int p, Metering metering) {
            RowTotals.ProductTotals product = row.products().get(p);
            if (metering != Metering.PER_ROW) {
                return new RowProduct(Double.NaN, product.targetVolumeL(), Double.NaN, Double.NaN);
            }
            return new RowProduct(
                    product.volumeL(),
                    product.targetVolumeL(),
                    row.meanRateLPerM2(p) * Factor.SQUARE_METRES_PER_HECTARE,
                    product.deviationPct());
        }
    }

    /** One pass, all rows together. */
    record OnePass(
            int pass,
            @OrNull @Nullable Instant start,
            @OrNull @Nullable Instant end,
            @Decimals(JsonNumbers.LENGTH_M) double lengthM,
            @Decimals(JsonNumbers.AREA_M2) double sweptAreaM2,
            Map<String, PassProduct> products) {
        static OnePass of(Pass pass, PassTotals totals, List<Product> products) {
            return new OnePass(
                    pass.number(),
                    JsonNumbers.instant(pass.startS()),
                    JsonNumbers.instant(pass.endS()),
                    pass.lengthM(),
                    totals.sweptAreaM2(),
                    ByProduct.of(products, p -> new PassProduct(totals.volumeL()[p], totals.targetVolumeL()[p])));
        }
    }

    /** One product of a pass. */
    record PassProduct(
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.VOLUME_L) double targetVolumeL) {}

    /**
     * What shutting rows off saved and cost.
     *
     * @param offOverCoveredAreaM2 off over covered ground: right
     * @param offOverUncoveredAreaM2 off over ground that was never covered: a skip
     * @param onOverCoveredAreaM2 on over covered ground: an overlap
     */
    record SectionControl(
            @Decimals(JsonNumbers.AREA_M2) double offOverCoveredAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double offOverUncoveredAreaM2,
            @Decimals(JsonNumbers.AREA_M2) double onOverCoveredAreaM2,
            @Decimals(JsonNumbers.VOLUME_L) double savedVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double skipVolumeL,
            @Decimals(JsonNumbers.VOLUME_L) double overlapVolumeL) {
        static SectionControl of(ShutOffScore score) {
            return new SectionControl(
                    score.offOverCoveredM2(),
                    score.offOverUncoveredM2(),
                    score.onOverCoveredM2(),
                    score.savedL(),
                    score.skippedL(),
                    score.overlapL());
        }
    }

    /**
     * Loads what writing the files of a job needs. Measured: 0.2 s of processor time, a twentieth of a small job; on a thread
     * of its own while the log is read it delays nothing.
     */
    public static void prepareWriting() {
        JsonFile.prepare(SummaryJson.class);
    }

    /** Writes the summary of a job. */
    public static void write(Analysis a, String programVersion, OutputStream out) throws IOException {
        JsonFile.write(of(a, programVersion), out);
    }

    static SummaryJson of(Analysis a, String programVersion) {
        List<Product> products = a.rig().products();
        FindingUncertainties uncertainties =
                new FindingUncertainties(a.rig(), a.strips(), a.track(), a.coverage(), a.diagnosis(), a.intervals());
        JobView job = new JobView(a.rig(), a.log(), a.track(), a.delivery(), a.rates(), a.coverage(), a.intervals());
        List<OnePass> passes = new ArrayList<>();
        for (int i = 0; i < a.track().passes().size(); i++) {
            passes.add(OnePass.of(a.track().passes().get(i), a.rates().passes().get(i), products));
        }
        return new SummaryJson(
                ResultFile.SUMMARY.schemaId(),
                programVersion,
                a.log().sources().stream().map(Input::of).toList(),
                JobJson.of(a.rig().job(), JobClock.zone(a)),
                Field.of(a),
                (a.log().isAreas() ? List.<RowTotals>of() : a.rates().rows())
                        .stream().map(row -> Row.of(row, products, a.log())).toList(),
                passes,
                FindingJson.InSummary.all(new FindingProducts(products, a.diagnosis()), uncertainties),
                SectionControl.of(a.coverage().shutOffs()),
                SetupJson.Summary.of(a.setup(), a.coverage(), products),
                ActionJson.of(job, a.findings(), uncertainties, a.whatIf()),
                a.notes().stream().map(FindingFacts::filed).toList());
    }
}
