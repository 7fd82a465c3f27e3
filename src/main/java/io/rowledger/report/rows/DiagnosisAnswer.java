package io.rowledger.report.rows;

import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.report.common.Fact;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.rows.RowDiagnosis.FirstStep;
import io.rowledger.report.rows.RowsInput.FindingView;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The answer at the top of page 1, and the facts on which it rests. */
final class DiagnosisAnswer {
    /** Findings named in the answer; the cards hold the rest. */
    private static final int MAX_SENTENCES = 3;
    /** A finding that begins or ends within this of the work did so with it, s; shorter than a pass. */
    private static final double MAX_EDGE_S = 60;
    /** Smallest share of row time to be evaluated before "nothing found" is an all-clear; common practice, no source. */
    private static final double MIN_EVALUATED_SHARE = 0.6;

    /** Notes of a log in which nothing was looked for. */
    private static final List<String> NOT_CHECKED = List.of("findings.note.noTimes", "findings.note.offScale");

    private final RowsInput in;
    private final Messages messages;
    private final EvaluatedTime evaluated;

    DiagnosisAnswer(RowsInput in, Messages messages) {
        this.in = in;
        this.messages = messages;
        this.evaluated = EvaluatedTime.of(
                in.track().passes(), in.diagnosis().pictures(), in.rig().rows());
    }

    List<String> sentences() {
        if (in.track().passes().isEmpty()) {
            return List.of(messages.text(in.areas() ? "rows.answer.areas" : "rows.answer.noPass"));
        }
        if (NOT_CHECKED.stream()
                .anyMatch(key -> in.diagnosis().notes().stream()
                        .anyMatch(note -> note.key().equals(key)))) {
            return List.of(messages.text(
                    "rows.answer.noRowBecause",
                    String.join(" ", messages.texts(in.diagnosis().notes()))));
        }
        List<String> sentences = new ArrayList<>(rowsOrBar());
        if (in.oneMeter()) {
            sentences.add(messages.text("rows.answer.oneMeter"));
        }
        return sentences;
    }

    private List<String> rowsOrBar() {
        List<String> unexplained = unexplained();
        if (!in.costly().isEmpty() || !unexplained.isEmpty()) {
            List<String> sentences = new ArrayList<>(findings());
            sentences.addAll(unexplained);
            return sentences;
        }
        if (in.oneMeter()) {
            return List.of(messages.text("rows.answer.oneMeterNothing"));
        }
        if (evaluated.rows() == 0) {
            return List.of(messages.text("rows.answer.noRow"));
        }
        return List.of(messages.text(nothingFound()));
    }

    private Message nothingFound() {
        int rows = in.rig().rows();
        if (evaluated.share() < MIN_EVALUATED_SHARE || evaluated.rows() < rows) {
            return Message.of(
                    "rows.answer.noAllClear", evaluated.rows(), rows, Message.percent(evaluated.share() * 100));
        }
        if (!in.diagnosis().allClear()) {
            return Message.of(
                    "rows.answer.coarse", Message.percent(in.diagnosis().resolvable() * 100));
        }
        RowBaseline farthest = farthestOff();
        if (farthest != null && !in.diagnosis().findings().isEmpty()) {
            return Message.of(
                    "rows.answer.onlyNoticed",
                    rows,
                    Message.percent(evaluated.share() * 100),
                    farthest.row(),
                    Message.percent((farthest.medianRatio() - 1) * 100));
        }
        return farthest == null
                ? Message.of("rows.answer.allClear", rows, Message.percent(evaluated.share() * 100))
                : Message.of(
                        "rows.answer.allClearFarthest",
                        rows,
                        Message.percent(evaluated.share() * 100),
                        farthest.row(),
                        Message.percent((farthest.medianRatio() - 1) * 100));
    }

    /** The row farthest from the others over the whole job, where no finding concerns a row; null if none is known. */
    private @Nullable RowBaseline farthestOff() {
        return in.diagnosis().baselines().stream()
                .filter(row -> Double.isFinite(row.medianRatio()))
                .max(Comparator.comparingDouble(row -> Math.abs(row.medianRatio() - 1)))
                .orElse(null);
    }

    /** Rows, or the bar, off without a recognized cause. */
    private List<String> unexplained() {
        return in.diagnosis().unexplained().stream()
                .map(deviation -> messages.text(deviation.text()))
                .toList();
    }

    private List<String> findings() {
        List<String> sentences = new ArrayList<>();
        List<FindingView> findings = in.costly();
        for (FindingView view : findings.subList(0, Math.min(MAX_SENTENCES, findings.size()))) {
            Finding finding = view.finding();
            sentences.add(messages.text(
                    "rows.answer.finding", view.title(), span(finding), FindingFacts.confidence(finding.confidence())));
        }
        int more = findings.size() - MAX_SENTENCES;
        if (more > 0) {
            sentences.add(messages.text("rows.answer.more", more));
        }
        return sentences;
    }

    private Message span(Finding finding) {
        UnitFormat f = messages.units();
        boolean oneDay = f.date(in.times().startS()).equals(f.date(in.times().endS()));
        boolean fromStart = finding.fromS() - in.times().startS() < MAX_EDGE_S;
        boolean toEnd = in.times().endS() - finding.toS() < MAX_EDGE_S;
        Message from = time(finding.fromS(), oneDay);
        Message to = time(finding.toS(), oneDay);
        if (fromStart) {
            return toEnd ? Message.of("rows.span.all") : Message.of("rows.span.until", to);
        }
        return toEnd ? Message.of("rows.span.from", from) : Message.of("rows.span.between", from, to);
    }

    /** What to do first about each finding that the answer names. */
    List<FirstStep> first() {
        List<FirstStep> steps = new ArrayList<>();
        List<FindingView> findings = in.costly();
        for (FindingView view : findings.subList(0, Math.min(MAX_SENTENCES, findings.size()))) {
            List<String> checks =
                    RowDiagnosisBuilder.steps(messages.text(view.finding().check()));
            steps.add(new FirstStep(
                    steps.size() + 1,
                    messages.text(view.title()),
                    messages.text(span(view.finding())),
                    messages.text(FindingSide.of(
                            view.finding().kind(),
                            in.totalMeters().get(view.window().product()))),
                    checks.isEmpty() ? "" : checks.get(0)));
        }
        return steps;
    }

    private static Message time(double epochS, boolean oneDay) {
        return oneDay
                ? Message.of("rows.span.minute", Message.time(epochS))
                : Message.of("rows.span.dateAndMinute", Message.time(epochS));
    }

    /** The facts that support the answer. */
    List<Fact> trust() {
        if (evaluated.rows() == 0) {
            return List.of();
        }
        return List.of(
                new Fact(
                        messages.text("rows.trust.lookedFor"), Wording.label(messages.text(FindingTitles.lookedFor()))),
                fact("rows.trust.method", Message.of("rows.trust.methodText")),
                fact(
                        "rows.trust.time",
                        Message.of(
                                "rows.trust.timeText",
                                Message.duration(evaluated.workingS()),
                                in.track().passes().size())),
                fact(
                        "rows.trust.rows",
                        Message.of(
                                "rows.trust.rowsText",
                                evaluated.rows(),
                                in.rig().rows())),
                fact("rows.trust.share", Message.of("rows.trust.shareText", Message.percent(evaluated.share() * 100))),
                fact("rows.trust.limits", Message.of("rows.trust.limitsText")));
    }

    private Fact fact(String label, Message value) {
        return new Fact(messages.text(label), messages.text(value));
    }
}
