package io.rowledger.report.review;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.document.text.Messages;
import io.rowledger.rate.RowTotals;
import io.rowledger.report.common.IntervalPhrases;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.review.PassReview.Figure;
import io.rowledger.report.sections.CoveragePhrases;
import io.rowledger.report.sections.CoverageSectionBuilder;
import io.rowledger.rig.Product;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** The figures of the whole job: a few on the first page, the others in a table further on. */
final class ReviewFigures {
    /** Products with a figure of their own on the first page: with more, it holds no more than five figures. */
    private static final int MAX_PRODUCTS = 2;

    private final JobView job;
    private final Messages messages;
    private final UnitFormat f;
    private final IntervalPhrases sure;
    private final List<Product> products;
    private final List<ProductSums> sums;

    ReviewFigures(JobView job, List<ProductSums> sums, Messages messages) {
        this.job = job;
        this.messages = messages;
        this.f = messages.units();
        this.sure = new IntervalPhrases(messages);
        this.products = job.rig().products();
        this.sums = sums;
    }

    /**
     * Those of the first page, four or five: ground covered, liquid applied, ground on rate (the mean rate without a target; with
     * several products one figure each for the liquid in its place), ground skipped, nitrogen.
     */
    List<Figure> firstPage() {
        List<Figure> figures = new ArrayList<>();
        figures.add(covered());
        for (int p = 0; p < products.size() && p < MAX_PRODUCTS; p++) {
            figures.add(applied(p));
        }
        if (products.size() == 1) {
            figures.add(sums.get(0).hasTarget() ? onRate(0) : meanRate(0));
        }
        figures.add(skipped());
        figures.add(nitrogen());
        return figures;
    }

    /** The others. */
    List<Figure> others() {
        List<Figure> figures = new ArrayList<>();
        for (int p = 0; p < products.size(); p++) {
            if (p >= MAX_PRODUCTS) {
                figures.add(applied(p));
            }
            if (products.size() > 1 || sums.get(p).hasTarget()) {
                figures.add(meanRate(p));
            }
            if (products.size() > 1 || !sums.get(p).hasTarget()) {
                figures.add(onRate(p));
            }
        }
        figures.add(overlap());
        figures.add(turnError());
        return figures;
    }

    private Figure covered() {
        Coverage c = job.coverage();
        String beside = c.boundary() == null
                ? messages.text("review.figure.worked", area(job.rates().sweptAreaM2()))
                : messages.text("review.figure.inBoundary", area(c.boundaryAreaM2()));
        Interval covered = job.intervals().coveredAreaM2();
        return new Figure(
                messages.text("review.figure.covered"),
                sure.value(QuantityKind.AREA, c.coveredAreaM2(), covered),
                sure.before(sure.bounds(QuantityKind.AREA, c.coveredAreaM2(), covered), beside),
                false);
    }

    private double fieldM2() {
        Coverage c = job.coverage();
        return c.boundary() == null ? c.coveredAreaM2() + c.skipAreaM2() : c.boundaryAreaM2();
    }

    private Figure skipped() {
        return places(
                "review.figure.skipped",
                CoverageSectionBuilder.skips(job.coverage(), job.intervals(), messages),
                fieldM2());
    }

    private Figure overlap() {
        return places(
                "review.figure.overlap",
                CoverageSectionBuilder.overlap(job.coverage(), job.intervals(), messages),
                fieldM2());
    }

    private Figure turnError() {
        TurnSums seen = TurnSums.of(job.rates().rows(), RowTotals::turn);
        TurnSums left = TurnSums.of(job.rates().rows(), RowTotals::turnRemaining);
        return new Figure(
                messages.text("review.figure.turnError"),
                job.log().isAreas() ? messages.text("words.notInFile") : f.percent(left.meanAbs() * 100),
                Double.isFinite(seen.meanAbs())
                        ? messages.text("review.figure.equalFlow", Message.percent(seen.meanAbs() * 100))
                        : "",
                left.meanAbs() * 100 > Limits.WATCH_PCT);
    }

    private Figure applied(int p) {
        ProductSums sum = sums.get(p);
        Intervals.OfProduct bounds = job.intervals().products().get(p);
        String note = isOffScale()
                ? messages.text("review.figure.offScale")
                : sum.hasTarget()
                        ? messages.text(
                                "review.figure.target",
                                Message.value(QuantityKind.VOLUME, sum.owedL()),
                                Message.percent(sum.deviationPct()))
                        : messages.text("review.figure.noTarget");
        return new Figure(
                ofProduct(p, "review.figure.applied"),
                sure.value(QuantityKind.VOLUME, sum.volumeL(), bounds.volumeL()),
                sure.before(sure.bounds(QuantityKind.VOLUME, sum.volumeL(), bounds.volumeL()), note),
                isOffScale() || Math.abs(sum.deviationPct()) > Limits.WATCH_PCT);
    }

    /** True if the controller's own totals contradict the rates that the figures follow. */
    private boolean isOffScale() {
        return job.log().isOffScale();
    }

    private Figure meanRate(int p) {
        ProductSums sum = sums.get(p);
        Intervals.OfProduct bounds = job.intervals().products().get(p);
        double rate = job.coverage().received().get(p).meanRateLPerM2();
        String note = sum.hasTarget()
                ? messages.text("review.figure.targetRate", Message.value(QuantityKind.RATE, sum.meanTargetLPerM2()))
                : messages.text("review.figure.noTarget");
        return new Figure(
                ofProduct(p, "review.figure.meanRate"),
                sure.value(QuantityKind.RATE, rate, bounds.meanRateLPerM2()),
                sure.before(sure.bounds(QuantityKind.RATE, rate, bounds.meanRateLPerM2()), note),
                false);
    }

    private Figure onRate(int p) {
        ReceivedStatistics received = job.coverage().received().get(p);
        return new Figure(
                ofProduct(p, "review.figure.onRate"),
                isOffScale() ? messages.text("review.figure.notKnown") : f.percent(received.within10Pct()),
                isOffScale()
                        ? messages.text("review.figure.offScale")
                        : sums.get(p).hasTarget()
                                ? messages.text("review.figure.within", Limits.wholePct(Limits.ACT_PCT))
                                : messages.text("review.figure.noTarget"),
                false);
    }

    private String ofProduct(int p, String key) {
        String label = messages.text(key);
        return products.size() > 1
                ? messages.text("words.summary.ofProduct", products.get(p).name(), label)
                : label;
    }

    private static Argument area(double areaM2) {
        return Message.value(QuantityKind.AREA, areaM2);
    }

    private Figure nitrogen() {
        double nitrogenKg = 0;
        for (int p = 0; p < products.size(); p++) {
            nitrogenKg += sums.get(p).volumeL() * products.get(p).nitrogenKgPerL();
        }
        double perM2 = nitrogenKg / job.coverage().coveredAreaM2();
        Interval rate = job.intervals().nitrogenKgPerM2();
        return new Figure(
                messages.text("review.figure.nitrogen"),
                sure.value(QuantityKind.NITROGEN_RATE, perM2, rate),
                Double.isFinite(nitrogenKg)
                        ? sure.before(
                                sure.bounds(QuantityKind.NITROGEN_RATE, perM2, rate),
                                messages.text(
                                        "review.figure.inAll",
                                        sure.within(
                                                QuantityKind.NITROGEN,
                                                nitrogenKg,
                                                job.intervals().nitrogenKg())))
                        : messages.text("review.figure.noDensity"),
                false);
    }

    private Figure places(String labelKey, CoveragePhrases phrases, double fieldM2) {
        double share = fieldM2 > 0 ? phrases.areaM2() / fieldM2 * 100 : Double.NaN;
        Message of = Message.of(
                job.coverage().boundary() == null ? "review.figure.ofGround" : "review.figure.ofField",
                Message.percent(phrases.none() ? 0 : share));
        String note = phrases.none() ? messages.text(of) : messages.text("review.figure.where", of, phrases.where());
        String bounds = phrases.none() ? "" : phrases.bounds();
        return new Figure(messages.text(labelKey), phrases.area(), sure.before(bounds, note), share > Limits.WATCH_PCT);
    }
}
