package io.rowledger.report.rows;

import io.rowledger.analysis.Analysis;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.FaultWords;
import io.rowledger.report.common.FindingProducts;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.RowHealth;
import io.rowledger.track.Pass;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** The answer for the person at the bench, and why it can be trusted. */
final class DiagnosisAnswer {
    /** As many findings as a person keeps in mind; the cards hold the rest. */
    private static final int SPOKEN = 3;
    /** "To the end" and "from the start" within this, s: less than a pass takes. */
    private static final double EDGE_S = 60;
    /** Below this share of judged row time, "nothing found" is no all-clear; common practice, no source. */
    private static final double MIN_EVALUATED = 0.6;

    private final Analysis a;
    private final Diagnosis d;
    private final UnitFormat f;
    private final double workingS;
    private final double evaluatedShare;
    private final int evaluatedRows;

    DiagnosisAnswer(Analysis a, UnitFormat f) {
        this.a = a;
        this.d = a.diagnosis();
        this.f = f;
        double work = 0;
        for (Pass pass : a.track().passes()) {
            work += pass.endS() - pass.startS();
        }
        workingS = work;
        double evaluatedS = 0;
        double allS = 0;
        boolean[] seen = new boolean[a.rig().rows()];
        for (RowTime picture : d.pictures()) {
            for (int b = 0; b < picture.bins(); b++) {
                double seconds = picture.endS(b) - picture.startS(b);
                for (int r = 0; r < picture.rows(); r++) {
                    allS += seconds;
                    if (!Double.isNaN(picture.deviation(r, b))) {
                        evaluatedS += seconds;
                        seen[r] = true;
                    }
                }
            }
        }
        evaluatedShare = allS > 0 ? evaluatedS / allS : 0;
        int rows = 0;
        for (boolean row : seen) {
            rows += row ? 1 : 0;
        }
        evaluatedRows = rows;
    }

    List<String> sentences() {
        if (a.track().passes().isEmpty()) {
            return List.of("The log holds no working pass: no row can be judged.");
        }
        if (!d.findings().isEmpty()) {
            return findings();
        }
        if (evaluatedRows == 0) {
            return List.of("No row could be judged, so this is no all-clear: the notes say why.");
        }
        String rows = evaluatedRows == a.rig().rows()
                ? "all " + evaluatedRows + " rows"
                : evaluatedRows + " of " + a.rig().rows() + " rows";
        String basis = rows + " were held against their siblings through " + f.percent(evaluatedShare * 100)
                + " of their working time, for every fault listed below";
        if (evaluatedShare < MIN_EVALUATED || evaluatedRows < a.rig().rows()) {
            return List.of("Nothing found, but this is no all-clear: only " + basis + ".");
        }
        return List.of("Nothing found, and here is why that can be trusted: " + basis + widest() + ".");
    }

    private String widest() {
        RowHealth widest = null;
        for (RowTime picture : d.pictures()) {
            for (RowHealth row : RowHealth.of(picture)) {
                if (Double.isFinite(row.medianDeviation())
                        && (widest == null || Math.abs(row.medianDeviation()) > Math.abs(widest.medianDeviation()))) {
                    widest = row;
                }
            }
        }
        return widest == null
                ? ""
                : ", and over the whole job the one furthest off, row " + widest.row() + ", ran at "
                        + f.signedPercent(widest.medianDeviation() * 100);
    }

    private List<String> findings() {
        List<String> sentences = new ArrayList<>();
        List<Finding> findings = d.findings();
        for (int i = 0; i < Math.min(SPOKEN, findings.size()); i++) {
            sentences.add(sentence(i));
        }
        int more = findings.size() - SPOKEN;
        if (more > 0) {
            sentences.add("And " + Wording.counted(more, "more finding", "more findings") + ", each on its own card.");
        }
        return sentences;
    }

    private String sentence(int i) {
        Finding finding = d.findings().get(i);
        return FindingProducts.prefix(a, i) + FaultWords.clause(finding) + " " + span(finding) + " (sure: "
                + f.fixed(finding.confidence() * 100, 0) + "%).";
    }

    private String span(Finding finding) {
        double startS = JobTimes.startS(a);
        double endS = JobTimes.endS(a);
        boolean oneDay = f.date(startS).equals(f.date(endS));
        boolean fromStart = finding.fromS() - startS < EDGE_S;
        boolean toEnd = endS - finding.toS() < EDGE_S;
        String from = oneDay ? f.minute(finding.fromS()) : f.dateAndTime(finding.fromS());
        String to = oneDay ? f.minute(finding.toS()) : f.dateAndTime(finding.toS());
        if (fromStart) {
            return toEnd ? "from start to end" : "from the start to " + to;
        }
        return toEnd ? "from " + from + " on" : "from " + from + " to " + to;
    }

    List<Fact> trust() {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Looked for", Wording.label(FaultWords.lookedFor())));
        facts.add(new Fact(
                "How a row is judged",
                "Against the median of its siblings in the same instant, each for its band "
                        + "and its place in the turn, and against its own past"));
        facts.add(new Fact(
                "Working time",
                f.duration(workingS) + " in "
                        + Wording.counted(a.track().passes().size(), "pass", "passes")));
        facts.add(new Fact("Rows judged", evaluatedRows + " of " + a.rig().rows()));
        facts.add(new Fact(
                "Share of the rows' working time judged",
                f.percent(evaluatedShare * 100)
                        + "; in the rest the row was off, switching, in a tight corner or alone"));
        facts.add(new Fact(
                "What a log can't show",
                "A meter that reads wrong looks like a rate that is wrong, and liquid "
                        + "that leaves between meter and ground looks like none: catch and measure"));
        return facts;
    }
}
