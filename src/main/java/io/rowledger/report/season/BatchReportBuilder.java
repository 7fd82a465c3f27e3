package io.rowledger.report.season;

import io.rowledger.document.text.TextTruncation;
import io.rowledger.document.text.Wording;
import io.rowledger.report.common.Caution;
import io.rowledger.report.common.FaultWords;
import io.rowledger.report.common.IntervalPhrases;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.season.BatchOutcome.Result;
import io.rowledger.report.season.BatchReport.Line;
import io.rowledger.report.season.BatchReport.Said;
import io.rowledger.report.season.BatchReport.Units;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Rounds and labels what became of the jobs of a batch. */
public final class BatchReportBuilder {
    private static final String NONE = "\u2013";
    /** Findings less sure than this are in the job's own row diagnosis alone. */
    private static final double WORTH_A_LOOK = 0.5;

    private final List<BatchOutcome> outcomes;
    private final List<BatchFigures> figures = new ArrayList<>();
    private final ReportOptions options;
    private final UnitFormat f;

    private BatchReportBuilder(List<BatchOutcome> outcomes, ReportOptions options) {
        this.outcomes = outcomes;
        this.options = options;
        this.f = options.format();
        for (BatchOutcome outcome : outcomes) {
            if (outcome.figures() != null) {
                figures.add(outcome.figures());
            }
        }
    }

    /** The summary as printed. */
    public static BatchReport build(List<BatchOutcome> outcomes, ReportOptions options) {
        return new BatchReportBuilder(outcomes, options).report();
    }

    private BatchReport report() {
        double startS = Double.POSITIVE_INFINITY;
        double endS = Double.NEGATIVE_INFINITY;
        for (BatchFigures one : figures) {
            startS = Double.isNaN(one.job().startS())
                    ? startS
                    : Math.min(startS, one.job().startS());
            endS = Double.isNaN(one.job().endS())
                    ? endS
                    : Math.max(endS, one.job().endS());
        }
        double lastS = Double.isInfinite(endS) ? Double.NaN : endS;
        String days = Double.isNaN(lastS) ? "No field done" : days(startS, lastS);
        String mass = f.unit(QuantityKind.NITROGEN).replace(" N", "");
        return new BatchReport(
                "Batch summary: " + days,
                days,
                lastS,
                "Rowledger " + options.programVersion(),
                answer(),
                said(Result::hint, outcome -> List.of(message(outcome))),
                new Units(
                        f.unit(QuantityKind.AREA),
                        f.unit(QuantityKind.VOLUME),
                        mass,
                        f.unit(QuantityKind.NITROGEN_RATE)),
                outcomes.stream()
                        .filter(outcome -> outcome.figures() != null)
                        .map(this::line)
                        .toList(),
                total(),
                faults(),
                said(result -> result == Result.SAME_LOG, outcome -> List.of(outcome.message())),
                said(result -> true, outcome -> outcome.how().isEmpty() ? List.of() : List.of(outcome.how())),
                List.of(Caution.RULES, Caution.METERS));
    }

    private String days(double startS, double endS) {
        return f.date(startS).equals(f.date(endS)) ? f.date(startS) : f.date(startS) + " to " + f.date(endS);
    }

    private int count(Result result) {
        return (int)
                outcomes.stream().filter(outcome -> outcome.result() == result).count();
    }

    private double sum(ToDoubleFunction<BatchFigures> figure) {
        return figures.stream().mapToDouble(figure).sum();
    }

    private List<String> answer() {
        List<String> answer = new ArrayList<>();
        int before = count(Result.AS_BEFORE);
        int hint = count(Result.UNUSABLE) + count(Result.FAILED);
        int same = count(Result.SAME_LOG);
        String of = Wording.counted(outcomes.size(), "job", "jobs") + ": " + count(Result.DONE) + " done now"
                + (before == 0 ? "" : ", " + before + " as before (same files and options)")
                + (same == 0 ? "" : ", " + same + " skipped (logs of another job)")
                + (hint == 0 ? "." : ", " + hint + " not done: see below.");
        answer.add(of);
        if (!figures.isEmpty()) {
            answer.add(f.text(QuantityKind.AREA, sum(one -> one.job().coveredM2())) + " covered, "
                    + f.text(QuantityKind.VOLUME, sum(BatchFigures::volumeL)) + " of liquid and "
                    + f.text(QuantityKind.NITROGEN, sum(one -> one.job().nitrogenKg())) + " put on by the meters; "
                    + f.text(QuantityKind.AREA, sum(BatchFigures::skipM2)) + " skipped, "
                    + f.text(QuantityKind.AREA, sum(BatchFigures::overlapM2)) + " doubled.");
            Interval nitrogen = Season.sum(
                    figures.stream().map(one -> one.job().nitrogenWithin()).toList());
            Interval covered = Season.sum(
                    figures.stream().map(one -> one.job().coveredWithin()).toList());
            if (nitrogen.known() && covered.known()) {
                IntervalPhrases words = new IntervalPhrases(f);
                answer.add(
                        "Meters, tape and receivers leave it at "
                                + words.within(QuantityKind.NITROGEN, nitrogen.value(), nitrogen) + " on "
                                + words.within(QuantityKind.AREA, covered.value(), covered)
                                + " (nine in ten), bounds added up from job to job; the table keeps all digits so that it adds up.");
            }
            long faulty = figures.stream()
                    .filter(one -> one.findings().stream().anyMatch(BatchReportBuilder::worthALook))
                    .count();
            answer.add(
                    faulty == 0
                            ? "No row, supply or setup was found to be faulty."
                            : "Something to look at on the machine in " + faulty + " of "
                                    + Wording.counted(figures.size(), "job", "jobs") + ".");
        }
        return answer;
    }

    private static boolean worthALook(BatchFigures.Fault fault) {
        return fault.confidence() >= WORTH_A_LOOK;
    }

    private List<Said> said(
            java.util.function.Predicate<Result> which, java.util.function.Function<BatchOutcome, List<String>> text) {
        List<Said> said = new ArrayList<>();
        for (BatchOutcome outcome : outcomes) {
            List<String> sentences = which.test(outcome.result()) ? text.apply(outcome) : List.of();
            if (!sentences.isEmpty()) {
                said.add(new Said(TextTruncation.title(outcome.name()), sentences));
            }
        }
        return said;
    }

    /** Of a failure of the program its first line: the rest is in the JSON, for whoever mends it. */
    private static String message(BatchOutcome outcome) {
        String first = outcome.message().lines().findFirst().orElse("");
        return outcome.result() == Result.FAILED
                ? "The program failed; please report it: " + TextTruncation.sentence(first)
                : first;
    }

    private List<Said> faults() {
        return said(Result::holds, outcome -> {
            List<String> text = new ArrayList<>();
            BatchFigures of = outcome.figures();
            for (BatchFigures.Fault fault : of == null ? List.<BatchFigures.Fault>of() : of.findings()) {
                if (worthALook(fault)) {
                    text.add(FaultWords.clause(fault.kind(), fault.rows()) + " (" + Math.round(fault.confidence() * 100)
                            + "% sure).");
                }
            }
            return text;
        });
    }

    private Line line(BatchOutcome outcome) {
        BatchFigures of = java.util.Objects.requireNonNull(outcome.figures());
        UnitFormat local = new UnitFormat(options.units(), of.job().zone());
        long found =
                of.findings().stream().filter(BatchReportBuilder::worthALook).count();
        return new Line(
                TextTruncation.name(outcome.name()),
                outcome.result().words(),
                local.date(of.job().startS()),
                number(QuantityKind.AREA, of.job().coveredM2()),
                number(QuantityKind.VOLUME, of.volumeL()),
                number(QuantityKind.NITROGEN, of.job().nitrogenKg()),
                number(
                        QuantityKind.NITROGEN_RATE,
                        of.job().nitrogenKg() / of.job().coveredM2()),
                number(QuantityKind.AREA, of.skipM2()),
                number(QuantityKind.AREA, of.overlapM2()),
                found == 0 ? NONE : f.count(found),
                found > 0);
    }

    private Line total() {
        return new Line(
                "All",
                "",
                "",
                number(QuantityKind.AREA, sum(one -> one.job().coveredM2())),
                number(QuantityKind.VOLUME, sum(BatchFigures::volumeL)),
                number(QuantityKind.NITROGEN, sum(one -> one.job().nitrogenKg())),
                "",
                number(QuantityKind.AREA, sum(BatchFigures::skipM2)),
                number(QuantityKind.AREA, sum(BatchFigures::overlapM2)),
                "",
                false);
    }

    private String number(QuantityKind measure, double si) {
        return Double.isFinite(si) ? f.number(measure, si) : NONE;
    }
}
