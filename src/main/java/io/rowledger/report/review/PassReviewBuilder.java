package io.rowledger.report.review;

import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.rate.Rates.PassTotals;
import io.rowledger.rate.RowTotals;
import io.rowledger.report.answer.MeteredRows;
import io.rowledger.report.answer.NextActions;
import io.rowledger.report.answer.ReviewSummary;
import io.rowledger.report.common.Cautions;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.GeoLink;
import io.rowledger.report.common.IntervalPhrases;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.review.PassReview.FindingLine;
import io.rowledger.report.review.PassReview.PassLine;
import io.rowledger.report.review.PassReview.PassRate;
import io.rowledger.report.review.PassReview.ProductReview;
import io.rowledger.report.review.PassReview.RowRate;
import io.rowledger.report.review.PassReview.TurnLine;
import io.rowledger.report.sections.CoverageSection;
import io.rowledger.report.sections.CoverageSectionBuilder;
import io.rowledger.report.sections.QualitySectionBuilder;
import io.rowledger.report.sections.SetbackSection;
import io.rowledger.report.sections.ZoneSectionBuilder;
import io.rowledger.rig.Product;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Builds the {@link PassReview}: the one place where its figures are rounded and labeled. */
final class PassReviewBuilder {
    /** What stands in a column that the log has nothing for. */
    private static final String NOT_LOGGED = "\u2013";

    private final ReviewInput in;
    private final JobView job;
    private final ReportOptions options;
    private final Messages messages;
    private final UnitFormat f;
    private final IntervalPhrases sure;
    private final List<Product> products;
    private final List<ProductSums> sums = new ArrayList<>();
    private final ReviewFigures figures;

    PassReviewBuilder(ReviewInput in, ReportOptions options) {
        this.in = in;
        this.job = in.job();
        this.options = options;
        this.messages = options.messages();
        this.f = messages.units();
        this.sure = new IntervalPhrases(messages);
        this.products = job.rig().products();
        for (int p = 0; p < products.size(); p++) {
            sums.add(ProductSums.of(job.rates(), job.coverage(), p));
        }
        this.figures = new ReviewFigures(job, sums, messages);
    }

    PassReview build() {
        List<ProductReview> reviews = new ArrayList<>();
        for (int p = 0; p < products.size(); p++) {
            reviews.add(product(p));
        }
        CoverageSectionBuilder ground =
                new CoverageSectionBuilder(job.coverage(), job.intervals(), job.track(), messages);
        CoverageSection section = ground.build();
        WorstPlaces worst = WorstPlaces.of(job, in.findings(), section, messages);
        SetbackSection setbacks =
                SetbackSection.of(in.setbacks(), products, job.track().plane(), messages);
        return new PassReview(
                ReportHeaders.of(messages.text("review.title"), job.rig(), in.times(), options),
                verdict(setbacks),
                NextActions.of(job, in.findings(), in.uncertainties(), in.whatIf(), messages),
                figures.firstPage(),
                figures.others(),
                DayLines.of(job, messages),
                reviews,
                turns(),
                turnSummary(),
                passes(),
                job.coverage().coveredAreaM2() > 0,
                section,
                ZoneSectionBuilder.build(
                        in.zones(), products, job.log(), job.coverage().coveredAreaM2(), messages),
                findings(),
                worst.places(),
                new SetupSection(in.setup(), products, job.coverage(), messages).build(),
                new QualitySectionBuilder(job, messages).build(in.notes(), in.limits()),
                messages.texts(Cautions.first()),
                messages.texts(Cautions.last()),
                setbacks,
                WhatIfWriter.section(in.whatIf(), job, messages));
    }

    /** What puts the figures in question, then the answer. */
    private List<String> verdict(@Nullable SetbackSection setbacks) {
        List<String> verdict = new ArrayList<>(in.warnings());
        verdict.addAll(
                messages.texts(new ReviewSummary(job, in.setup().contradicted(), setbacks, messages).paragraphs()));
        return verdict;
    }

    private ProductReview product(int p) {
        Product product = products.get(p);
        ProductSums sum = sums.get(p);
        ReceivedStatistics r = job.coverage().received().get(p);
        List<RowRate> rows = new ArrayList<>();
        for (MeteredRows part : MeteredRows.of(job, p)) {
            rows.add(rowRate(part, rows.size() + 1));
        }
        List<Double> histogram = new ArrayList<>();
        for (double areaM2 : r.histogramM2()) {
            histogram.add(areaM2);
        }
        Intervals intervals = job.intervals();
        Intervals.OfProduct ofProduct = intervals.products().get(p);
        String ofRows = ofRows(p);
        String summary = messages.text(
                "review.product.summary",
                sure.within(QuantityKind.VOLUME, sum.volumeL(), ofProduct.volumeL()),
                sure.within(QuantityKind.AREA, job.coverage().coveredAreaM2(), intervals.coveredAreaM2()),
                sure.within(QuantityKind.RATE, r.meanRateLPerM2(), ofProduct.meanRateLPerM2()));
        String basis = messages.text(sum.hasTarget() ? "review.product.basisTarget" : "review.product.basisMean");
        return new ProductReview(
                product.key(),
                product.name(),
                products.size() > 1 ? messages.text("review.product.head", product.name()) : "",
                ofRows.isEmpty() ? summary : summary + " " + ofRows,
                basis,
                rows,
                received(r, sum),
                histogram,
                Double.isNaN(r.within10Pct()) ? 100 : r.within10Pct(),
                sum.hasTarget());
    }

    /** What the log tells of single rows. */
    private String ofRows(int p) {
        if (job.log().isAreas()) {
            return messages.text("review.product.areas");
        }
        return switch (job.log().metering(p)) {
            case PER_ROW -> sure.ofRows(job.intervals(), p);
            case SHARED -> messages.text("review.product.sharedMeters");
            case WHOLE_BAR -> messages.text("review.product.oneMeter");
        };
    }

    private List<Fact> received(ReceivedStatistics r, ProductSums sum) {
        List<Fact> facts = new ArrayList<>();
        if (sum.hasTarget()) {
            facts.add(share("review.received.within", Limits.WATCH_PCT, r.within5Pct()));
            facts.add(share("review.received.within", Limits.ACT_PCT, r.within10Pct()));
            facts.add(share("review.received.within", Limits.FAR_PCT, r.within20Pct()));
            facts.add(share("review.received.under", Limits.ACT_PCT, r.underPct()));
            facts.add(share("review.received.over", Limits.ACT_PCT, r.overPct()));
        }
        facts.add(new Fact(messages.text("review.received.spread"), f.percent(r.cvPct())));
        return facts;
    }

    private Fact share(String labelKey, double limitPct, double sharePct) {
        return new Fact(messages.text(labelKey, Limits.wholePct(limitPct)), f.percent(sharePct));
    }

    private RowRate rowRate(MeteredRows part, int number) {
        double rate = part.appliedAreaM2() > 0 ? part.volumeL() / part.appliedAreaM2() : Double.NaN;
        return new RowRate(
                number,
                Wording.ranges(part.rows()),
                f.number(QuantityKind.AREA, part.sweptAreaM2()),
                f.number(QuantityKind.AREA, part.appliedAreaM2()),
                f.number(QuantityKind.VOLUME, part.volumeL()),
                Wording.cell(f.number(QuantityKind.VOLUME, part.owedL())),
                Wording.cell(f.number(QuantityKind.RATE, rate)),
                f.signedPercent(part.deviationPct()),
                part.deviationPct(),
                Limits.mark(part.deviationPct()));
    }

    private List<TurnLine> turns() {
        List<TurnLine> lines = new ArrayList<>();
        for (RowTotals row :
                job.log().isAreas() ? List.<RowTotals>of() : job.rates().rows()) {
            RowTotals.TurnError seen = row.turn();
            RowTotals.TurnError left = row.turnRemaining();
            double sharePct = row.sweptAreaM2() > 0 ? 100 / row.sweptAreaM2() : Double.NaN;
            lines.add(new TurnLine(
                    row.row(),
                    Wording.cell(f.percent(seen.meanAbs() * 100)),
                    Wording.cell(f.signedPercent(seen.maxOver() * 100)),
                    Wording.cell(f.signedPercent(seen.maxUnder() * 100)),
                    Wording.cell(f.percent(left.meanAbs() * 100)),
                    Wording.cell(f.signedPercent(left.maxOver() * 100)),
                    Wording.cell(f.signedPercent(left.maxUnder() * 100)),
                    Wording.cell(f.percent(left.beyond5M2() * sharePct)),
                    Wording.cell(f.percent(left.beyond10M2() * sharePct)),
                    seen.meanAbs() * 100,
                    left.meanAbs() * 100));
        }
        return lines;
    }

    private String turnSummary() {
        TurnSums seen = TurnSums.of(job.rates().rows(), RowTotals::turn);
        TurnSums left = TurnSums.of(job.rates().rows(), RowTotals::turnRemaining);
        if (!Double.isFinite(seen.meanAbs()) || !Double.isFinite(left.meanAbs())) {
            return "";
        }
        return messages.text(
                "review.turns.summary",
                Message.percent(seen.meanAbs() * 100),
                Message.percent(left.meanAbs() * 100),
                Message.percent(left.beyond10Share() * 100),
                Limits.wholePct(Limits.ACT_PCT));
    }

    private String start(Pass pass) {
        return severalDays() ? f.shortDateAndTime(pass.startS()) : f.clock(pass.startS());
    }

    private List<PassLine> passes() {
        List<PassLine> lines = new ArrayList<>();
        List<Pass> passes = job.track().passes();
        for (int i = 0; i < passes.size(); i++) {
            Pass pass = passes.get(i);
            PassTotals totals = job.rates().passes().get(i);
            boolean timed = job.log().isTimed();
            double seconds = timed ? pass.endS() - pass.startS() : Double.NaN;
            lines.add(new PassLine(
                    pass.number(),
                    timed ? start(pass) : NOT_LOGGED,
                    timed ? f.duration(seconds) : NOT_LOGGED,
                    f.number(QuantityKind.LENGTH, pass.lengthM()),
                    f.compass(pass.headingRad()),
                    timed
                            ? f.number(QuantityKind.SPEED, seconds > 0 ? pass.lengthM() / seconds : Double.NaN)
                            : NOT_LOGGED,
                    f.number(QuantityKind.AREA, totals.sweptAreaM2()),
                    "trace/" + pass.number(),
                    passRates(totals)));
        }
        return lines;
    }

    private boolean severalDays() {
        return !f.sameDay(in.times().startS(), in.times().endS());
    }

    private List<PassRate> passRates(PassTotals totals) {
        List<PassRate> rates = new ArrayList<>();
        for (int p = 0; p < products.size(); p++) {
            double volumeL = totals.volumeL()[p];
            double targetL = totals.meteredTargetL()[p];
            double deviation = ProductSums.offPct(
                    volumeL, targetL - job.coverage().shutOffCredit().ofPassL(p, totals.pass()));
            rates.add(new PassRate(
                    f.number(QuantityKind.VOLUME, volumeL),
                    f.number(QuantityKind.RATE, totals.sweptAreaM2() > 0 ? volumeL / totals.sweptAreaM2() : Double.NaN),
                    Wording.cell(f.signedPercent(deviation)),
                    Limits.mark(deviation)));
        }
        return rates;
    }

    private List<FindingLine> findings() {
        List<FindingLine> lines = new ArrayList<>();
        for (int i = 0; i < in.findings().size(); i++) {
            Finding finding = in.findings().get(i);
            lines.add(new FindingLine(
                    in.findingProducts().prefix(i) + messages.text(FindingTitles.of(finding)),
                    messages.text(FindingFacts.confidence(finding.confidence())),
                    when(finding),
                    GeoLink.of(finding.latDeg(), finding.lonDeg(), messages),
                    Wording.label(messages.text(
                            FindingFacts.cost(finding, in.uncertainties().of(i)))),
                    messages.text(finding.evidence()),
                    messages.text(finding.alternative()),
                    messages.text(finding.check())));
        }
        return lines;
    }

    private String when(Finding finding) {
        String key = severalDays() ? "review.finding.whenDays" : "review.finding.when";
        return messages.text(key, Message.time(finding.fromS()), Message.time(finding.toS()));
    }
}
