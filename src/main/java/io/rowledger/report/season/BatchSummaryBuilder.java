package io.rowledger.report.season;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.report.common.Cautions;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.season.BatchOutcome.Result;
import io.rowledger.report.season.BatchSummary.JobText;
import io.rowledger.report.season.BatchSummary.Line;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** Rounds and labels the outcomes of a batch. */
final class BatchSummaryBuilder {
    private final List<BatchOutcome> outcomes;
    private final List<BatchFigures> figures;
    private final ReportOptions options;
    private final Messages messages;
    private final UnitFormat f;
    private final LedgerCells cells;

    BatchSummaryBuilder(List<BatchOutcome> outcomes, ReportOptions options) {
        this.outcomes = outcomes;
        this.figures = outcomes.stream()
                .map(BatchOutcome::figures)
                .filter(Objects::nonNull)
                .toList();
        this.options = options;
        this.messages = options.messages();
        this.f = options.format();
        this.cells = new LedgerCells(messages);
    }

    BatchSummary build() {
        double endS = figures.stream()
                .mapToDouble(one -> one.job().endS())
                .filter(Double::isFinite)
                .max()
                .orElse(Double.NaN);
        String days = Double.isNaN(endS)
                ? messages.text("season.batch.noField")
                : cells.days(figures.stream().map(BatchFigures::job).toList());
        return new BatchSummary(
                messages.text("season.batch.title", days),
                days,
                endS,
                "Rowledger " + options.programVersion(),
                messages.texts(answer()),
                texts(Result::needsAction, outcome -> List.of(message(outcome))),
                cells.units(),
                outcomes.stream()
                        .filter(outcome -> outcome.figures() != null)
                        .map(this::line)
                        .toList(),
                total(),
                texts(Result::hasResults, this::faults),
                texts(result -> result == Result.SAME_LOG, outcome -> List.of(outcome.message())),
                texts(result -> true, outcome -> outcome.how().isEmpty() ? List.of() : List.of(outcome.how())),
                messages.texts(List.of(Cautions.RULES, Cautions.METERS)));
    }

    private int count(Result result) {
        return (int)
                outcomes.stream().filter(outcome -> outcome.result() == result).count();
    }

    private double sum(ToDoubleFunction<BatchFigures> figure) {
        return figures.stream().mapToDouble(figure).sum();
    }

    private List<Message> answer() {
        List<Message> answer = new ArrayList<>();
        answer.add(jobs());
        if (figures.isEmpty()) {
            return answer;
        }
        answer.add(Message.of(
                "season.batch.totals",
                area(one -> one.job().coveredM2()),
                Message.value(QuantityKind.VOLUME, sum(BatchFigures::volumeL)),
                Message.value(QuantityKind.NITROGEN, sum(one -> one.job().nitrogenKg())),
                area(BatchFigures::skipM2),
                area(BatchFigures::overlapM2)));
        Interval nitrogen = Season.sum(
                figures.stream().map(one -> one.job().nitrogenWithin()).toList());
        Interval covered = Season.sum(
                figures.stream().map(one -> one.job().coveredWithin()).toList());
        if (nitrogen.known() && covered.known()) {
            answer.add(cells.bounds(nitrogen, covered));
            answer.add(Message.of("season.answer.boundsAddUp"));
        }
        long faulty =
                figures.stream().filter(one -> !namedFindings(one).isEmpty()).count();
        answer.add(faulty == 0 ? noFault() : Message.of("season.batch.faults", faulty, figures.size()));
        return answer;
    }

    /** No finding, and in how many of the jobs no single row could be compared with the others. */
    private Message noFault() {
        long unchecked = figures.stream().filter(one -> !showsRows(one.job())).count();
        return unchecked == 0
                ? Message.of("season.batch.noFault")
                : Message.of("season.batch.noFaultUnchecked", unchecked, figures.size());
    }

    /** Returns true if the row diagnosis could compare some row with the others. */
    private static boolean showsRows(SeasonJob job) {
        SavedDiagnosis rows = job.rows();
        return rows != null
                && rows.products().stream()
                        .flatMap(product -> product.rows().stream())
                        .anyMatch(row -> row.evaluatedS() > 0);
    }

    private Message jobs() {
        List<Message> parts = new ArrayList<>();
        parts.add(Message.of("season.batch.done", count(Result.DONE)));
        if (count(Result.AS_BEFORE) > 0) {
            parts.add(Message.of("season.batch.asBefore", count(Result.AS_BEFORE)));
        }
        if (count(Result.SAME_LOG) > 0) {
            parts.add(Message.of("season.batch.skipped", count(Result.SAME_LOG)));
        }
        int failed = count(Result.UNUSABLE) + count(Result.FAILED);
        return failed == 0
                ? Message.of("season.batch.jobs", outcomes.size(), parts)
                : Message.of("season.batch.jobsNotDone", outcomes.size(), parts, failed);
    }

    private Argument area(ToDoubleFunction<BatchFigures> figure) {
        return Message.value(QuantityKind.AREA, sum(figure));
    }

    private static List<JobFinding> namedFindings(BatchFigures figures) {
        return figures.findings().stream().filter(JobFinding::isNamed).toList();
    }

    /** Text about the jobs with one of these results; jobs without text are left out. */
    private List<JobText> texts(Predicate<Result> which, Function<BatchOutcome, List<String>> text) {
        List<JobText> texts = new ArrayList<>();
        for (BatchOutcome outcome : outcomes) {
            List<String> sentences = which.test(outcome.result()) ? text.apply(outcome) : List.of();
            if (!sentences.isEmpty()) {
                texts.add(new JobText(TextTruncation.title(outcome.name()), sentences));
            }
        }
        return texts;
    }

    /** The first line of the message; the JSON holds the rest. */
    private String message(BatchOutcome outcome) {
        String first = outcome.message().lines().findFirst().orElse("");
        return outcome.result() == Result.FAILED
                ? messages.text("season.batch.failed", TextTruncation.sentence(first))
                : first;
    }

    private List<String> faults(BatchOutcome outcome) {
        BatchFigures of = outcome.figures();
        if (of == null) {
            return List.of();
        }
        return namedFindings(of).stream()
                .map(fault -> messages.text(
                        "season.batch.fault",
                        FindingTitles.of(fault.kind(), fault.rows(), fault.meters()),
                        FindingFacts.confidence(fault.confidence())))
                .toList();
    }

    private Line line(BatchOutcome outcome) {
        BatchFigures of = Objects.requireNonNull(outcome.figures());
        int found = namedFindings(of).size();
        return new Line(
                TextTruncation.name(outcome.name()),
                messages.text(outcome.result().text()),
                cells.day(of.job(), of.job().startS()),
                cell(QuantityKind.AREA, of.job().coveredM2()),
                cell(QuantityKind.VOLUME, of.volumeL()),
                cell(QuantityKind.NITROGEN, of.job().nitrogenKg()),
                cell(
                        QuantityKind.NITROGEN_RATE,
                        of.job().nitrogenKg() / of.job().coveredM2()),
                cell(QuantityKind.AREA, of.skipM2()),
                cell(QuantityKind.AREA, of.overlapM2()),
                found == 0 ? LedgerCells.NONE : f.count(found),
                found > 0);
    }

    private Line total() {
        return new Line(
                messages.text("season.batch.all"),
                "",
                "",
                cell(QuantityKind.AREA, sum(one -> one.job().coveredM2())),
                cell(QuantityKind.VOLUME, sum(BatchFigures::volumeL)),
                cell(QuantityKind.NITROGEN, sum(one -> one.job().nitrogenKg())),
                "",
                cell(QuantityKind.AREA, sum(BatchFigures::skipM2)),
                cell(QuantityKind.AREA, sum(BatchFigures::overlapM2)),
                "",
                false);
    }

    /** A narrow column: a dash stands for a figure that is not known. */
    private String cell(QuantityKind kind, double si) {
        return Wording.cell(cells.number(kind, si));
    }
}
