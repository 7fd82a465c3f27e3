package io.rowledger.page;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.RowCheck;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.page.PageBody.Card;
import io.rowledger.page.PageBody.PassRow;
import io.rowledger.page.PageBody.Step;
import io.rowledger.rate.RowTotals;
import io.rowledger.report.answer.NextActions;
import io.rowledger.report.common.Cautions;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.report.review.PassReview;
import io.rowledger.report.review.PassReviewReport;
import io.rowledger.report.rows.RowDiagnosis;
import io.rowledger.report.rows.RowDiagnosisReport;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** What people read on the page, in the language and units of the options. */
final class PageBodyBuilder {
    private PageBodyBuilder() {}

    /**
     * The text of a whole job.
     *
     * @param rows its row diagnosis, in any language and units
     */
    static PageBody of(Analysis a, RowDiagnosisReport rows, ReportOptions options, String picture) {
        Messages messages = options.messages();
        PassReview review = PassReviewReport.of(a, options).content();
        NextActions next = next(a, messages);
        RowDiagnosis diagnosis = rows.in(a, options).content();
        return new PageBody(
                review.head().field(),
                review.head().when(),
                review.head().machine(),
                review.verdict(),
                next.actions().stream().map(Step::of).toList(),
                next.nothing().isEmpty() ? next.alsoFound() : List.of(next.nothing()),
                review.figures(),
                List.of(review),
                passes(a, review, messages),
                diagnosis.answer(),
                diagnosis.orders(),
                diagnosis.guards(),
                diagnosis.cards().stream().map(PageBodyBuilder::card).toList(),
                diagnosis.alsoNoticed(),
                review.quality().notes(),
                BarDrawing.of(a.rig(), a.setup().check(), messages),
                picture);
    }

    private static NextActions next(Analysis a, Messages messages) {
        JobView job = new JobView(a.rig(), a.log(), a.track(), a.delivery(), a.rates(), a.coverage(), a.intervals());
        FindingUncertainties uncertainties =
                new FindingUncertainties(a.rig(), a.strips(), a.track(), a.coverage(), a.diagnosis(), a.intervals());
        return NextActions.of(job, a.findings(), uncertainties, a.whatIf(), messages);
    }

    private static Card card(RowDiagnosis.Card card) {
        return new Card(
                card.number(),
                card.title(),
                card.sure(),
                List.of(card.when(), card.where(), card.cost()),
                card.evidence(),
                card.alternative(),
                card.checks());
    }

    private static List<PassRow> passes(Analysis a, PassReview review, Messages messages) {
        List<PassRow> rows = new ArrayList<>();
        for (int i = 0; i < review.passes().size(); i++) {
            List<RowTotals> totals = a.rates().passRows().get(i);
            rows.add(new PassRow(
                    review.passes().get(i),
                    mean(totals, RowTotals::turn, messages),
                    mean(totals, RowTotals::turnRemaining, messages)));
        }
        return rows;
    }

    /** Mean size of the turn error, weighted by the rows' swept areas. */
    private static String mean(
            List<RowTotals> rows, Function<RowTotals, RowTotals.TurnError> error, Messages messages) {
        double sum = 0;
        double areaM2 = 0;
        for (RowTotals row : rows) {
            double mean = error.apply(row).meanAbs();
            if (Double.isFinite(mean)) {
                sum += mean * row.sweptAreaM2();
                areaM2 += row.sweptAreaM2();
            }
        }
        return Wording.cell(messages.units().percent(areaM2 > 0 ? sum / areaM2 * 100 : Double.NaN));
    }

    /** The text of a check of rows without a rig file. */
    static PageBody of(RowCheck check, String name, ReportOptions options) {
        Messages messages = options.messages();
        List<Finding> findings = check.diagnosis().findings();
        JobTimes times = JobTimes.of(check.track(), check.reading().table(), options.zone());
        List<String> answer = new ArrayList<>();
        if (findings.isEmpty()) {
            answer.add(messages.text(check.comparesRows() ? "check.nothing" : "check.notComparable"));
        }
        List<Card> cards = new ArrayList<>();
        for (Finding finding : findings) {
            answer.add(messages.text(
                    "check.finding", FindingTitles.of(finding), FindingFacts.confidence(finding.confidence())));
            cards.add(card(cards.size() + 1, finding, messages));
        }
        return new PageBody(
                name,
                ReportHeaders.when(times, messages),
                messages.text(check.what()),
                answer,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                messages.texts(Cautions.opening()),
                messages.texts(Cautions.guards()),
                cards,
                List.of(),
                Stream.concat(check.diagnosis().notes().stream(), check.reading().notes().stream())
                        .map(messages::text)
                        .toList(),
                "",
                "");
    }

    private static Card card(int number, Finding finding, Messages messages) {
        return new Card(
                number,
                messages.text(FindingTitles.of(finding)),
                messages.text(FindingFacts.confidence(finding.confidence())),
                List.of(messages.text("page.check.span", Message.time(finding.fromS()), Message.time(finding.toS()))),
                messages.text(finding.evidence()),
                messages.text(finding.alternative()),
                Stream.of(messages.text(finding.check()).split(";"))
                        .map(Wording::label)
                        .map(step -> step.endsWith(".") ? step : step + ".")
                        .toList());
    }
}
