package io.rowledger.report.rows;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.common.Cautions;
import io.rowledger.report.common.Fact;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingMark;
import io.rowledger.report.findings.MeterLanes;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.report.findings.RowPictureFigure;
import io.rowledger.report.rows.RowDiagnosis.Baseline;
import io.rowledger.report.rows.RowDiagnosis.BaselineLine;
import io.rowledger.report.rows.RowDiagnosis.Card;
import io.rowledger.report.rows.RowsInput.FindingView;
import io.rowledger.rig.Product;
import io.rowledger.text.Message;
import io.rowledger.track.Pass;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Rounds and labels the figures of a row diagnosis. */
final class RowDiagnosisBuilder {
    /** Times shorter than this keep a decimal, s. */
    private static final double MAX_DECIMAL_S = 60;

    private final RowsInput in;
    private final Diagnosis diagnosis;
    private final Messages messages;
    private final UnitFormat f;
    private final List<Product> products;

    RowDiagnosisBuilder(RowsInput in, Messages messages) {
        this.in = in;
        this.diagnosis = in.diagnosis();
        this.messages = messages;
        this.f = messages.units();
        this.products = in.rig().products();
    }

    RowDiagnosis build() {
        List<Card> cards = new ArrayList<>();
        for (FindingView view : in.costly()) {
            cards.add(card(cards.size() + 1, view));
        }
        List<String> alsoNoticed = in.findings().stream()
                .filter(FindingView::alsoNoticed)
                .map(view -> messages.text(
                        "rows.alsoNoticed.line", view.title(), view.finding().evidence()))
                .toList();
        CatchTest catching = new CatchTest(in, messages);
        DiagnosisAnswer answer = new DiagnosisAnswer(in, messages);
        return new RowDiagnosis(
                in.header(),
                answer.sentences(),
                answer.first(),
                in.oneMeter(),
                alsoNoticed,
                messages.texts(Cautions.opening()),
                messages.texts(Cautions.guards()),
                pictures(),
                cards,
                catching.symptoms(),
                catching.steps(),
                catching.figure(),
                answer.trust(),
                messages.texts(diagnosis.notes()),
                baselines());
    }

    private List<RowPictureFigure> pictures() {
        List<RowPictureFigure> pictures = new ArrayList<>();
        for (int p = 0; p < (in.oneMeter() ? 0 : diagnosis.pictures().size()); p++) {
            RowTime full = diagnosis.pictures().get(p);
            if (full.bins() == 0 && !in.track().passes().isEmpty()) {
                continue;
            }
            List<FindingMark> marks = new ArrayList<>();
            for (int i = 0; i < in.costly().size(); i++) {
                FindingView view = in.costly().get(i);
                if (view.products().contains(p)) {
                    Finding finding = view.finding();
                    marks.add(new FindingMark(i + 1, finding.rows(), finding.fromS(), finding.toS()));
                }
            }
            pictures.add(new RowPictureFigure(
                    products.get(p).key(),
                    products.get(p).name(),
                    RowPicture.size(
                            in.lanes().get(p).rows().size(),
                            diagnosis.pictures().size() > 1),
                    in.lanes().get(p).of(RowPicture.of(full)),
                    in.traces().get(p).hasTarget(),
                    in.lanes().get(p).of(marks)));
        }
        return pictures;
    }

    private Card card(int number, FindingView view) {
        Finding finding = view.finding();
        return new Card(
                number,
                messages.text(view.title()),
                messages.text(FindingFacts.confidence(finding.confidence())),
                span(finding),
                where(finding),
                messages.text(FindingFacts.cost(finding, view.uncertainty())),
                messages.text(finding.evidence()),
                messages.text(finding.alternative()),
                facts(view),
                steps(messages.text(finding.check())),
                !FindingFacts.onlySetup(finding.kind()),
                finding.latDeg(),
                finding.lonDeg());
    }

    private String span(Finding finding) {
        boolean sameDay = f.date(finding.fromS()).equals(f.date(finding.toS()));
        boolean oneDay = f.date(in.times().startS()).equals(f.date(in.times().endS()));
        return messages.text(
                "rows.card.span",
                clock(finding.fromS(), !oneDay),
                clock(finding.toS(), !sameDay),
                Message.duration(finding.toS() - finding.fromS()));
    }

    private static Message clock(double epochS, boolean withDate) {
        return withDate
                ? Message.of("rows.card.dateAndClock", Message.time(epochS))
                : Message.of("rows.card.clock", Message.time(epochS));
    }

    private String where(Finding finding) {
        for (Pass pass : in.track().passes()) {
            if (finding.fromS() <= pass.endS()) {
                return messages.text(
                        "rows.card.whereInPass", Message.place(finding.latDeg(), finding.lonDeg()), pass.number());
            }
        }
        return messages.text("rows.card.where", Message.place(finding.latDeg(), finding.lonDeg()));
    }

    /** Splits a check at its semicolons into steps; the cheapest and safest comes first. */
    static List<String> steps(String check) {
        List<String> steps = new ArrayList<>();
        for (String step : check.split(";", -1)) {
            String text = Wording.label(step);
            if (!text.isEmpty()) {
                steps.add(text.endsWith(".") ? text : text + ".");
            }
        }
        return steps;
    }

    /** The finding's own figures, and how much the row let through while lifted. */
    private List<Fact> facts(FindingView view) {
        List<Fact> facts =
                new ArrayList<>(figures(view.figures(), view.finding().kind()));
        List<Integer> rows = view.finding().rows();
        if (!rows.isEmpty() && !FindingFacts.onlySetup(view.finding().kind())) {
            double liftedLPerS = in.traces().get(view.window().product()).liftedLPerS[rows.get(0) - 1];
            if (Double.isFinite(liftedLPerS)) {
                facts.add(new Fact(messages.text("rows.card.lifted"), f.text(QuantityKind.FLOW, liftedLPerS)));
            }
        }
        return facts;
    }

    private List<Fact> figures(List<Figure> figures, FindingKind kind) {
        List<Fact> facts = new ArrayList<>();
        for (Figure figure : figures) {
            String value =
                    switch (figure.unit()) {
                        case "m/s" -> f.text(QuantityKind.SPEED, figure.value());
                        case "m" ->
                            kind == FindingKind.SIDE_OFFSET
                                    ? sideways(figure.value())
                                    : f.text(QuantityKind.DIMENSION, figure.value());
                        // A flow lag is entered to a hundredth of a second and known to about a tenth.
                        case "s" ->
                            kind == FindingKind.FLOW_LAG
                                    ? messages.text("rows.seconds", Message.decimal(figure.value(), 2))
                                    : seconds(figure.value());
                        case "1" -> f.percent(figure.value() * 100);
                        default -> throw new IllegalStateException("a figure in " + figure.unit());
                    };
            facts.add(new Fact(Wording.label(messages.text(figure.label())), value));
        }
        return facts;
    }

    /** A lateral offset, m, positive right, with its side in words instead of a sign. */
    private String sideways(double offsetM) {
        Message size = Message.of("rows.side.none", Message.value(QuantityKind.DIMENSION, Math.abs(offsetM)));
        boolean none = f.text(QuantityKind.DIMENSION, Math.abs(offsetM)).equals(f.text(QuantityKind.DIMENSION, 0));
        if (none) {
            return messages.text(size);
        }
        return offsetM < 0 ? messages.text("rows.side.left", size) : messages.text("rows.side.right", size);
    }

    private String seconds(double s) {
        return Double.isFinite(s) && Math.abs(s) < MAX_DECIMAL_S
                ? messages.text("rows.seconds", Message.decimal(s, 1))
                : f.duration(s);
    }

    private List<Baseline> baselines() {
        List<Baseline> baselines = new ArrayList<>();
        for (int p = 0; p < (in.oneMeter() ? 0 : products.size()); p++) {
            List<BaselineLine> lines = new ArrayList<>();
            int outliers = 0;
            for (RowBaseline row : diagnosis.baselines()) {
                int number = row.row();
                List<Integer> lane = in.lanes().get(p).rows().stream()
                        .filter(rows -> rows.contains(number))
                        .findFirst()
                        .orElse(List.of(number));
                if (row.product() == p && lane.get(0) == number) {
                    lines.add(line(row, MeterLanes.label(lane)));
                    outliers += row.outlier() ? 1 : 0;
                }
            }
            if (!lines.isEmpty()) {
                baselines.add(new Baseline(
                        products.get(p).key(),
                        products.get(p).name(),
                        messages.text("rows.baseline.summary", outliers),
                        lines));
            }
        }
        return baselines;
    }

    private BaselineLine line(RowBaseline row, String label) {
        double usualPct = (row.medianRatio() - 1) * 100;
        boolean evaluated = row.evaluatedS() > 0;
        return new BaselineLine(
                row.row(),
                label,
                f.signedPercent(usualPct),
                f.percent(row.spread() * 100),
                Double.isFinite(row.responseS()) ? seconds(row.responseS()) : f.unknown(),
                evaluated ? f.duration(row.evaluatedS()) : messages.text("rows.baseline.never"),
                note(row),
                usualPct,
                row.spread() * 100,
                row.outlier());
    }

    private String note(RowBaseline row) {
        if (row.evaluatedS() <= 0) {
            return messages.text("rows.baseline.notChecked");
        }
        return row.outlier() ? messages.text("rows.baseline.outlier") : "";
    }
}
