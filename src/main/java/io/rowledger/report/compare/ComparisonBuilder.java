package io.rowledger.report.compare;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.report.common.Caution;
import io.rowledger.report.common.FaultWords;
import io.rowledger.report.common.FindingFacts;
import io.rowledger.report.common.FindingMark;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.RowHealth;
import io.rowledger.report.common.RowPicture;
import io.rowledger.report.common.SavedDiagnosis;
import io.rowledger.report.common.SavedDiagnosis.ProductState;
import io.rowledger.report.common.SavedDiagnosis.SavedFinding;
import io.rowledger.report.compare.Comparison.ComparisonHead;
import io.rowledger.report.compare.Comparison.Group;
import io.rowledger.report.compare.Comparison.Line;
import io.rowledger.report.compare.Comparison.ProductPair;
import io.rowledger.report.compare.Comparison.RowLine;
import io.rowledger.report.compare.Comparison.Side;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Two {@link SavedDiagnosis} to a {@link Comparison}: the one place where its figures are rounded and labelled. */
public final class ComparisonBuilder {
    private static final String NONE = "\u2013";

    private final SavedDiagnosis before;
    private final SavedDiagnosis after;
    private final Matching matching;
    private final ReportOptions options;
    private final UnitFormat f;

    private ComparisonBuilder(SavedDiagnosis before, SavedDiagnosis after, ReportOptions options) {
        this.before = before;
        this.after = after;
        this.matching = Matching.of(before, after);
        this.options = options;
        this.f = options.format();
    }

    /** The comparison of two jobs of the same machine in the options' units and zone. */
    public static Comparison build(SavedDiagnosis before, SavedDiagnosis after, ReportOptions options) {
        return new ComparisonBuilder(before, after, options).build();
    }

    private Comparison build() {
        List<ProductPair> products = new ArrayList<>();
        for (ProductState state : after.products()) {
            for (ProductState old : before.products()) {
                if (old.key().equals(state.key())) {
                    products.add(product(old, state));
                }
            }
        }
        List<String> notes = new ArrayList<>();
        before.notes().forEach(note -> notes.add("Before: " + note));
        after.notes().forEach(note -> notes.add("After: " + note));
        return new Comparison(head(), answer(), Caution.opening(), Caution.guards(), groups(), products, notes);
    }

    private ComparisonHead head() {
        return new ComparisonHead(
                "Before and after: " + after.rig() + ", " + f.date(after.endS()),
                after.rig() + ", " + after.rows() + " rows",
                job(before),
                job(after),
                after.endS(),
                "Rowledger " + options.programVersion());
    }

    private String job(SavedDiagnosis job) {
        return (job.field().isEmpty() ? "" : job.field() + ", ") + ReportHeaders.when(job.startS(), job.endS(), f);
    }

    private List<String> answer() {
        List<String> answer = new ArrayList<>();
        if (after.startS() < before.startS()) {
            answer.add(
                    "Careful: the later job comes first here. The two folders may have been given the wrong way round.");
        }
        if (!before.rig().equals(after.rig())) {
            answer.add("Careful: the rig files have different names, " + before.rig() + " and " + after.rig() + ".");
        }
        answer.add(verdict());
        for (Matching.Pair pair : matching.remaining()) {
            answer.add("Still there: " + clause(pair.after()) + ".");
        }
        for (SavedFinding found : matching.fresh()) {
            answer.add("New: " + clause(found) + ".");
        }
        return answer;
    }

    private String verdict() {
        int gone = matching.gone().size();
        int left = matching.remaining().size();
        int fresh = matching.fresh().size();
        int untested = matching.notTested().size();
        String news = fresh == 0 ? "nothing new shows" : Wording.counted(fresh, "finding is new", "findings are new");
        if (gone + left + untested == 0) {
            return "Nothing was found before, and " + news + ".";
        }
        String start = left == 0 && untested == 0 ? "Yes" : gone > 0 ? "Partly" : left > 0 ? "No" : "Not known yet";
        List<String> parts = new ArrayList<>();
        if (gone > 0) {
            parts.add(Wording.counted(gone, "finding is gone", "findings are gone"));
        }
        if (left > 0) {
            parts.add(Wording.counted(left, "remains", "remain"));
        }
        if (untested > 0) {
            parts.add(Wording.counted(untested, "could not be tested", "could not be tested"));
        }
        return start + ": of " + Wording.counted(before.findings().size(), "finding", "findings") + " before, "
                + String.join(", ", parts) + "; " + news + ".";
    }

    private String clause(SavedFinding found) {
        return productName(found) + FaultWords.clause(found.finding());
    }

    private String productName(SavedFinding found) {
        if (after.products().size() < 2) {
            return "";
        }
        return after.products().stream()
                .filter(state -> state.key().equals(found.product()))
                .map(state -> state.name() + ": ")
                .findFirst()
                .orElse("");
    }

    private List<Group> groups() {
        List<Line> remaining = new ArrayList<>();
        matching.remaining()
                .forEach(
                        pair -> remaining.add(new Line(clause(pair.after()), text(pair.before()), text(pair.after()))));
        List<Line> fresh = new ArrayList<>();
        matching.fresh().forEach(found -> fresh.add(new Line(clause(found), NONE, text(found))));
        List<Line> untested = new ArrayList<>();
        matching.notTested()
                .forEach(one -> untested.add(
                        new Line(clause(one.before()), text(one.before()), Wording.label(one.why()) + ".")));
        List<Line> gone = new ArrayList<>();
        matching.gone().forEach(found -> gone.add(new Line(clause(found), text(found), absent(found))));
        List<Group> groups = new ArrayList<>();
        add(groups, "remaining", "Remaining", remaining);
        add(groups, "new", "New", fresh);
        add(groups, "not-tested", "Not tested: no all-clear for these", untested);
        add(groups, "gone", "Gone", gone);
        return groups;
    }

    private static void add(List<Group> groups, String key, String title, List<Line> lines) {
        if (!lines.isEmpty()) {
            groups.add(new Group(key, title, lines));
        }
    }

    private String text(SavedFinding found) {
        Finding finding = found.finding();
        return Wording.label(FindingFacts.sure(finding.confidence(), f)) + ", " + f.minute(finding.fromS()) + " to "
                + f.minute(finding.toS()) + ". " + Messages.english(f).text(finding.evidence());
    }

    /** That a fault is absent means something only with the time in which it could have shown. */
    private String absent(SavedFinding found) {
        List<Integer> rows = found.finding().rows();
        double evaluatedS = Double.NaN;
        for (ProductState state : after.products()) {
            for (RowHealth row : state.rows()) {
                if (state.key().equals(found.product()) && rows.contains(row.row())) {
                    evaluatedS = Double.isNaN(evaluatedS) ? row.evaluatedS() : Math.min(evaluatedS, row.evaluatedS());
                } else if (state.key().equals(found.product()) && rows.isEmpty()) {
                    evaluatedS = Double.isNaN(evaluatedS) ? row.evaluatedS() : Math.max(evaluatedS, row.evaluatedS());
                }
            }
        }
        return "Not found in " + f.duration(evaluatedS) + " of judged work.";
    }

    private ProductPair product(ProductState old, ProductState state) {
        List<RowLine> rows = new ArrayList<>();
        for (int r = 0; r < state.rows().size(); r++) {
            RowHealth a = old.rows().get(r);
            RowHealth b = state.rows().get(r);
            RowVerdict verdict = RowVerdict.of(a, b);
            rows.add(new RowLine(
                    b.row(),
                    f.signedPercent(a.medianDeviation() * 100),
                    f.percent(a.offShare() * 100),
                    f.signedPercent(b.medianDeviation() * 100),
                    f.percent(b.offShare() * 100),
                    verdict.words(),
                    verdict.mark()));
        }
        return new ProductPair(
                state.key(),
                state.name(),
                RowPicture.size(after.rows(), after.products().size() > 1),
                side(before, old),
                side(after, state),
                rows);
    }

    private static Side side(SavedDiagnosis job, ProductState state) {
        List<FindingMark> marks = new ArrayList<>();
        for (int i = 0; i < job.findings().size(); i++) {
            SavedFinding found = job.findings().get(i);
            if (found.product().equals(state.key())) {
                Finding finding = found.finding();
                marks.add(new FindingMark(i + 1, finding.rows(), finding.fromS(), finding.toS()));
            }
        }
        return new Side(state.picture(), marks);
    }
}
