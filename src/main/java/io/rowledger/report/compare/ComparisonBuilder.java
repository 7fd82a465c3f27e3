package io.rowledger.report.compare;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.report.common.Cautions;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.compare.Comparison.ComparisonHead;
import io.rowledger.report.compare.Comparison.Group;
import io.rowledger.report.compare.Comparison.Line;
import io.rowledger.report.compare.Comparison.ProductPair;
import io.rowledger.report.compare.Comparison.RowLine;
import io.rowledger.report.compare.Comparison.Side;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingMark;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.findings.SavedDiagnosis.ProductState;
import io.rowledger.report.findings.SavedDiagnosis.SavedFinding;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Rounds and labels the figures of a comparison. */
final class ComparisonBuilder {
    /** What a cell holds if a job doesn't have the finding. */
    private static final String NONE = "\u2013";

    private final SavedDiagnosis before;
    private final SavedDiagnosis after;
    private final Matching matching;
    private final ReportOptions options;
    private final Messages messages;
    private final UnitFormat f;

    ComparisonBuilder(SavedDiagnosis before, SavedDiagnosis after, ReportOptions options) {
        this.before = before;
        this.after = after;
        this.matching = Matching.of(before, after);
        this.options = options;
        this.messages = options.messages();
        this.f = options.format();
    }

    Comparison build() {
        List<ProductPair> products = new ArrayList<>();
        for (ProductState state : after.products()) {
            for (ProductState old : before.products()) {
                if (old.key().equals(state.key())) {
                    products.add(product(old, state));
                }
            }
        }
        List<String> notes = new ArrayList<>();
        before.notes().forEach(note -> notes.add(messages.text("compare.note.before", note)));
        after.notes().forEach(note -> notes.add(messages.text("compare.note.after", note)));
        return new Comparison(
                head(),
                answer(),
                messages.texts(Cautions.opening()),
                messages.texts(Cautions.guards()),
                groups(),
                products,
                notes);
    }

    private ComparisonHead head() {
        return new ComparisonHead(
                messages.text("compare.head.title", after.rig(), Message.time(after.endS())),
                messages.text("compare.head.machine", after.rig(), after.rows()),
                job(before),
                job(after),
                after.endS(),
                "Rowledger " + options.programVersion());
    }

    private String job(SavedDiagnosis job) {
        String when = ReportHeaders.when(job.startS(), job.endS(), messages);
        return job.field().isEmpty() ? when : messages.text("compare.head.job", job.field(), when);
    }

    private List<String> answer() {
        List<String> answer = new ArrayList<>();
        if (after.startS() < before.startS()) {
            answer.add(messages.text("compare.answer.order"));
        }
        if (!before.rig().equals(after.rig())) {
            answer.add(messages.text("compare.answer.rigs", before.rig(), after.rig()));
        }
        if (!sameName(before.field(), after.field())) {
            answer.add(messages.text("compare.answer.fields", named(before.field()), named(after.field())));
        }
        List<String> alone = inOneJob();
        if (!alone.isEmpty()) {
            answer.add(messages.text("compare.answer.products", alone));
        }
        answer.add(messages.text(verdict()));
        for (Matching.Pair pair : matching.remaining()) {
            answer.add(messages.text("compare.answer.remaining", clause(pair.after())));
        }
        for (SavedFinding found : matching.fresh()) {
            answer.add(messages.text("compare.answer.new", clause(found)));
        }
        return answer;
    }

    /** Names as people write them: case and spaces don't count. */
    private static boolean sameName(String a, String b) {
        return a.strip().replaceAll("\\s+", " ").equalsIgnoreCase(b.strip().replaceAll("\\s+", " "));
    }

    private String named(String field) {
        return field.isBlank() ? messages.text("compare.answer.noField") : field.strip();
    }

    /** Products that only one of the jobs applied. */
    private List<String> inOneJob() {
        List<String> names = new ArrayList<>();
        for (ProductState state : before.products()) {
            if (after.products().stream().noneMatch(one -> one.key().equals(state.key()))) {
                names.add(state.name());
            }
        }
        for (ProductState state : after.products()) {
            if (before.products().stream().noneMatch(one -> one.key().equals(state.key()))) {
                names.add(state.name());
            }
        }
        return names;
    }

    private Message verdict() {
        int gone = matching.gone().size();
        int remaining = matching.remaining().size();
        int untested = matching.notTested().size();
        boolean laterUnchecked = matching.fresh().isEmpty() && !isChecked(after);
        Message fresh = laterUnchecked
                ? Message.of("compare.verdict.laterUnchecked")
                : Message.of("compare.verdict.fresh", matching.fresh().size());
        if (gone + remaining + untested == 0) {
            boolean checked = isChecked(before);
            return laterUnchecked && !checked
                    ? Message.of("compare.verdict.noneChecked")
                    : Message.of(checked ? "compare.verdict.nothingBefore" : "compare.verdict.earlierUnchecked", fresh);
        }
        List<Message> parts = new ArrayList<>();
        if (gone > 0) {
            parts.add(Message.of("compare.verdict.gone", gone));
        }
        if (remaining > 0) {
            parts.add(Message.of("compare.verdict.remaining", remaining));
        }
        if (untested > 0) {
            parts.add(Message.of("compare.verdict.untested", untested));
        }
        return Message.of(
                "compare.verdict.all",
                yesOrNo(gone, remaining, untested),
                before.findings().size(),
                parts,
                fresh);
    }

    /** Returns true if some row of a job was held against the others. */
    private static boolean isChecked(SavedDiagnosis job) {
        return job.products().stream()
                .anyMatch(product -> product.rows().stream().anyMatch(row -> row.evaluatedS() > 0));
    }

    private static Message yesOrNo(int gone, int remaining, int untested) {
        if (remaining == 0 && untested == 0) {
            return Message.of("compare.verdict.yes");
        }
        if (gone > 0) {
            return Message.of("compare.verdict.partly");
        }
        return remaining > 0 ? Message.of("compare.verdict.no") : Message.of("compare.verdict.notKnown");
    }

    /** {@code Row 7 looks plugged}, with the product if there are several. */
    private String clause(SavedFinding found) {
        String clause = messages.text(FindingTitles.of(found.finding()));
        if (after.products().size() < 2) {
            return clause;
        }
        return after.products().stream()
                .filter(state -> state.key().equals(found.product()))
                .map(state -> messages.text("compare.ofProduct", state.name(), clause))
                .findFirst()
                .orElse(clause);
    }

    private List<Group> groups() {
        List<Group> groups = new ArrayList<>();
        add(
                groups,
                "remaining",
                "compare.group.remaining",
                matching.remaining(),
                pair -> new Line(clause(pair.after()), text(pair.before()), text(pair.after())));
        add(groups, "new", "compare.group.new", matching.fresh(), found -> new Line(clause(found), NONE, text(found)));
        add(
                groups,
                "not-tested",
                "compare.group.notTested",
                matching.notTested(),
                one -> new Line(clause(one.before()), text(one.before()), messages.text(one.why())));
        add(
                groups,
                Comparison.GONE,
                "compare.group.gone",
                matching.gone(),
                found -> new Line(clause(found), text(found), absent(found)));
        return groups;
    }

    private <T> void add(List<Group> groups, String key, String title, List<T> findings, Function<T, Line> line) {
        if (!findings.isEmpty()) {
            groups.add(new Group(
                    key, messages.text(title), findings.stream().map(line).toList()));
        }
    }

    private String text(SavedFinding found) {
        Finding finding = found.finding();
        return messages.text(
                "compare.finding",
                FindingFacts.confidence(finding.confidence()),
                Message.time(finding.fromS()),
                Message.time(finding.toS()),
                finding.evidence());
    }

    /** Says in how much evaluated time a fault did not show. */
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
        return messages.text("compare.absent", Message.duration(evaluatedS));
    }

    private ProductPair product(ProductState old, ProductState state) {
        List<RowLine> rows = new ArrayList<>();
        for (int r = 0; r < state.rows().size(); r++) {
            rows.add(row(old.rows().get(r), state.rows().get(r)));
        }
        return new ProductPair(
                state.key(),
                state.name(),
                RowPicture.size(after.rows(), after.products().size() > 1),
                side(before, old),
                side(after, state),
                rows);
    }

    private RowLine row(RowHealth old, RowHealth now) {
        RowVerdict verdict = RowVerdict.of(old, now);
        return new RowLine(
                now.row(),
                f.signedPercent(old.medianDeviation() * 100),
                f.percent(old.offShare() * 100),
                f.signedPercent(now.medianDeviation() * 100),
                f.percent(now.offShare() * 100),
                messages.text(verdict.text()),
                verdict.mark());
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
