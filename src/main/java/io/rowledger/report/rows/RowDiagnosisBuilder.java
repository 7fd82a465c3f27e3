package io.rowledger.report.rows;

import io.rowledger.analysis.Analysis;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.common.Caution;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.FaultWords;
import io.rowledger.report.common.FindingFacts;
import io.rowledger.report.common.FindingMark;
import io.rowledger.report.common.FindingProducts;
import io.rowledger.report.common.FindingUncertainty;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.RowPicture;
import io.rowledger.report.common.RowPictureFigure;
import io.rowledger.report.rows.RowDiagnosis.Baseline;
import io.rowledger.report.rows.RowDiagnosis.BaselineLine;
import io.rowledger.report.rows.RowDiagnosis.Card;
import io.rowledger.rig.Product;
import io.rowledger.track.Pass;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** An {@link Analysis} to the {@link RowDiagnosis}: the one place where its figures are rounded and labelled. */
public final class RowDiagnosisBuilder {
    private final Analysis a;
    private final Diagnosis d;
    private final ReportOptions options;
    private final UnitFormat f;
    private final List<Product> products;

    private RowDiagnosisBuilder(Analysis a, ReportOptions options) {
        this.a = a;
        this.d = a.diagnosis();
        this.options = options;
        this.f = options.format();
        this.products = a.rig().products();
    }

    /** The diagnosis of this analysis in the options' units and zone. */
    public static RowDiagnosis build(Analysis analysis, ReportOptions options) {
        return new RowDiagnosisBuilder(analysis, options).build();
    }

    private RowDiagnosis build() {
        List<Card> cards = new ArrayList<>();
        for (int i = 0; i < d.findings().size(); i++) {
            cards.add(card(i));
        }
        DiagnosisAnswer answer = new DiagnosisAnswer(a, f);
        return new RowDiagnosis(
                ReportHeaders.of("Row diagnosis", a, options),
                answer.sentences(),
                Caution.opening(),
                Caution.guards(),
                pictures(),
                "Each line is a row, time runs to the right with the turns left out, and a color says how far the row was "
                        + "off what its siblings imply in the same instant. White gaps are pass ends; gray is time in which "
                        + "the row was off, switching or could not be judged."
                        + (cards.isEmpty() ? "" : " Numbered frames are the findings below."),
                cards,
                answer.trust(),
                d.notes(),
                baselines());
    }

    private List<RowPictureFigure> pictures() {
        List<RowPictureFigure> pictures = new ArrayList<>();
        for (int p = 0; p < d.pictures().size(); p++) {
            RowTime full = d.pictures().get(p);
            List<FindingMark> marks = new ArrayList<>();
            for (int i = 0; i < d.findings().size(); i++) {
                if (FindingProducts.of(a, i).contains(p)) {
                    Finding finding = d.findings().get(i);
                    marks.add(new FindingMark(i + 1, finding.rows(), finding.fromS(), finding.toS()));
                }
            }
            pictures.add(new RowPictureFigure(
                    products.get(p).key(),
                    products.get(p).name(),
                    RowPicture.size(full.rows(), d.pictures().size() > 1),
                    RowPicture.of(full),
                    marks));
        }
        return pictures;
    }

    private Card card(int i) {
        Finding finding = d.findings().get(i);
        return new Card(
                i + 1,
                FindingProducts.prefix(a, i) + FaultWords.clause(finding),
                FindingFacts.sure(finding.confidence(), f),
                span(finding),
                where(finding),
                FindingFacts.cost(finding, FindingUncertainty.of(a, i), f),
                Messages.english(f).text(finding.evidence()),
                Messages.english(f).text(finding.alternative()),
                figures(d.figures().get(i), finding.kind()),
                steps(Messages.english(f).text(finding.check())),
                "onset/" + (i + 1),
                finding.latDeg(),
                finding.lonDeg());
    }

    private String span(Finding finding) {
        boolean sameDay = f.date(finding.fromS()).equals(f.date(finding.toS()));
        boolean oneDay = f.date(JobTimes.startS(a)).equals(f.date(JobTimes.endS(a)));
        String from = (oneDay ? "" : f.date(finding.fromS()) + " ") + f.clock(finding.fromS());
        String to = (sameDay ? "" : f.date(finding.toS()) + " ") + f.clock(finding.toS());
        return from + " to " + to + " (" + f.duration(finding.toS() - finding.fromS()) + ")";
    }

    private String where(Finding finding) {
        for (Pass pass : a.track().passes()) {
            if (finding.fromS() <= pass.endS()) {
                return f.place(finding.latDeg(), finding.lonDeg()) + ", first in pass " + pass.number();
            }
        }
        return f.place(finding.latDeg(), finding.lonDeg());
    }

    /** A check is a chain of steps, cheapest and safest first, parted by semicolons. */
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

    private List<Fact> figures(List<Figure> figures, FindingKind kind) {
        List<Fact> facts = new ArrayList<>();
        for (Figure figure : figures) {
            String value =
                    switch (figure.unit()) {
                        case "m/s" -> f.text(QuantityKind.SPEED, figure.value());
                        case "m" ->
                            kind == FindingKind.SIDE_OFFSET
                                    ? aside(figure.value())
                                    : f.text(QuantityKind.DIMENSION, figure.value());
                        // A lag is entered to a hundredth, and known to about a tenth.
                        case "s" ->
                            kind == FindingKind.FLOW_LAG
                                    ? f.fixed(figure.value(), 2) + "\u00a0s"
                                    : seconds(figure.value(), f);
                        case "1" -> f.percent(figure.value() * 100);
                        default -> throw new IllegalStateException("a figure in " + figure.unit());
                    };
            facts.add(new Fact(Wording.label(figure.name()), value));
        }
        return facts;
    }

    /** A side in words: nobody reads left out of a minus sign. */
    private String aside(double m) {
        String size = f.text(QuantityKind.DIMENSION, Math.abs(m));
        return size.equals(f.text(QuantityKind.DIMENSION, 0)) ? size : size + (m < 0 ? " left" : " right");
    }

    /** Short times keep a decimal. */
    static String seconds(double s, UnitFormat f) {
        return Double.isFinite(s) && Math.abs(s) < 60 ? f.fixed(s, 1) + "\u00a0s" : f.duration(s);
    }

    private List<Baseline> baselines() {
        List<Baseline> baselines = new ArrayList<>();
        for (int p = 0; p < products.size(); p++) {
            List<BaselineLine> lines = new ArrayList<>();
            int apart = 0;
            for (RowBaseline row : d.baselines()) {
                if (row.product() == p) {
                    lines.add(line(row));
                    apart += row.outlier() ? 1 : 0;
                }
            }
            if (!lines.isEmpty()) {
                String summary = apart == 0
                        ? "No row stands apart from the others."
                        : Wording.counted(apart, "row stands", "rows stand")
                                + " apart from the others by more than meters usually differ.";
                baselines.add(
                        new Baseline(products.get(p).key(), products.get(p).name(), summary, lines));
            }
        }
        return baselines;
    }

    private BaselineLine line(RowBaseline row) {
        double usual = (row.medianRatio() - 1) * 100;
        boolean evaluated = row.evaluatedS() > 0;
        return new BaselineLine(
                row.row(),
                f.signedPercent(usual),
                f.percent(row.spread() * 100),
                Double.isFinite(row.responseS()) ? seconds(row.responseS(), f) : UnitFormat.UNKNOWN,
                evaluated ? f.duration(row.evaluatedS()) : "never",
                !evaluated ? "faulty or not judged throughout" : row.outlier() ? "stands apart" : "",
                usual,
                row.spread() * 100,
                row.outlier());
    }
}
