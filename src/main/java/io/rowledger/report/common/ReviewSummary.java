package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.RowTotals;
import io.rowledger.uncertainty.Interval;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The answer in words: did every row get its rate, and is any ground skipped or doubled? It speaks of what the meters
 * say and never of what may be wrong with the machine.
 */
public final class ReviewSummary {
    private final JobView job;
    private final boolean setupContradicted;
    private final @Nullable SetbackSection setbacks;
    private final Messages messages;
    private final UnitFormat f;
    private final List<ProductSums> sums = new ArrayList<>();

    /**
     * The summary of a job.
     *
     * @param setupContradicted true if the log contradicts the rig file
     * @param setbacks what was applied within setbacks; null if no keep-out file was given
     */
    public ReviewSummary(JobView job, boolean setupContradicted, @Nullable SetbackSection setbacks, Messages messages) {
        this.job = job;
        this.setupContradicted = setupContradicted;
        this.setbacks = setbacks;
        this.messages = messages;
        this.f = messages.units();
        for (int p = 0; p < job.rig().products().size(); p++) {
            sums.add(ProductSums.of(job.rates(), job.coverage(), p));
        }
    }

    /** One row and how far it is off. */
    private record Off(int row, double pct) {}

    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        if (job.track().passes().isEmpty() || job.rates().sweptAreaM2() <= 0) {
            return List.of("The log holds no working pass: there is nothing to judge.");
        }
        for (int p = 0; p < sums.size(); p++) {
            String of = sums.size() > 1 ? job.rig().products().get(p).name() + ": " : "";
            sentences.add(of + rows(p));
        }
        sentences.add(ground());
        if (setbacks != null) {
            sentences.add(setbacks.summary());
        }
        addDoubts(sentences);
        return sentences;
    }

    /** What makes the figures doubtful, sentence by sentence. */
    public List<String> doubts() {
        List<String> doubts = new ArrayList<>();
        addDoubts(doubts);
        return doubts;
    }

    /** What makes the figures doubtful belongs beside them, not on the last page alone. */
    private void addDoubts(List<String> sentences) {
        for (ReceivedStatistics received : job.coverage().received()) {
            if (!(Math.abs(received.conservationError()) * 100 <= Limits.CONSERVATION_PCT)) {
                sentences.add("The map's total does not agree with the log's total: don't trust the map.");
                break;
            }
        }
        if (setupContradicted) {
            sentences.add(
                    "The log contradicts the setup in the rig file: where liquid went, and with it areas, rates, skips and"
                            + " doubles, may be off by more than the bounds beside them say.");
        }
        addUnsureRows(sentences);
        addMissingFlows(sentences);
        Coverage c = job.coverage();
        double outsidePct = c.boundary() == null ? 0 : c.outsideBoundaryM2() / c.coveredAreaM2() * 100;
        if (outsidePct > Limits.OUTSIDE_PCT) {
            sentences.add(f.percent(outsidePct)
                    + " of the covered ground lies outside the boundary: is it this field's, and up to date?");
        }
        long records = 0;
        long used = 0;
        for (LogSource source : job.log().sources()) {
            records += source.records();
            // A receiver slower than the logger repeats positions; what flowed there counts at the next one.
            used += source.used() + source.dropped().frozen();
        }
        double droppedPct = records > 0 ? 100.0 * (records - used) / records : 0;
        if (droppedPct > Limits.DROPPED_PCT) {
            sentences.add(f.percent(droppedPct) + " of the log's records could not be used.");
        }
        double unsettledPct = job.rates().unsettledAreaM2() / job.rates().sweptAreaM2() * 100;
        if (unsettledPct > Limits.UNSETTLED_PCT) {
            sentences.add(
                    f.percent(unsettledPct) + " of the ground was swept while the bar's angle was not yet known.");
        }
    }

    /** Rows can't be said to be within 5 % where their meters and ground are not known to 5 %. */
    private void addUnsureRows(List<String> sentences) {
        for (int p = 0; p < sums.size(); p++) {
            double bestPct = bestPct(p);
            if (bestPct > Limits.WATCH_PCT) {
                String of = sums.size() > 1 ? job.rig().products().get(p).name() + ": no" : "No";
                sentences.add(of + " row's volume against its target is known better than to \u00b1 "
                        + f.percent(bestPct) + ", so whether rows are within 5% can't be told.");
            }
        }
    }

    /** What the best known row is known to, percent of its target; NaN where nothing can be said. */
    private double bestPct(int p) {
        return job.intervals().rows().stream()
                .map(row -> row.products().get(p).deviationPct())
                .filter(Interval::known)
                .mapToDouble(off -> (off.high() - off.low()) / 2)
                .min()
                .orElse(Double.NaN);
    }

    /** An unknown flow is counted as none where it can't be bridged, so such a row looks emptier than it was. */
    private void addMissingFlows(List<String> sentences) {
        for (int p = 0; p < sums.size(); p++) {
            List<Integer> rows = new ArrayList<>();
            for (int r = 0; r < job.rig().rows(); r++) {
                if (job.log().missingFlowShare(p, r) * 100 > Limits.DROPPED_PCT) {
                    rows.add(r + 1);
                }
            }
            if (!rows.isEmpty()) {
                String of = sums.size() > 1
                        ? "Flows of " + job.rig().products().get(p).name()
                        : "Flows";
                sentences.add(of + " are missing from more than 5% of the records of row"
                        + (rows.size() == 1 ? " " : "s ") + Wording.ranges(rows)
                        + ": breaks of more than a few seconds count as no flow.");
            }
        }
    }

    private String rows(int p) {
        ProductSums sum = sums.get(p);
        List<Off> act = new ArrayList<>();
        List<Off> watch = new ArrayList<>();
        Off widest = new Off(0, 0);
        int evaluated = 0;
        for (RowTotals row : job.rates().rows()) {
            double pct = sum.deviationPct(job.coverage(), row, p);
            if (Double.isNaN(pct)) {
                continue;
            }
            evaluated++;
            Off off = new Off(row.row(), pct);
            if (Math.abs(pct) > Limits.ACT_PCT) {
                act.add(off);
            } else if (Math.abs(pct) > Limits.WATCH_PCT) {
                watch.add(off);
            }
            widest = Math.abs(pct) > Math.abs(widest.pct) || widest.row == 0 ? off : widest;
        }
        if (evaluated == 0) {
            return "No flow was metered while working: no row can be judged.";
        }
        String basis = sum.hasTarget() ? "target volume" : "mean of all rows (nobody gave a target rate)";
        String its = sum.hasTarget() ? "its " : "the ";
        if (act.isEmpty() && watch.isEmpty()) {
            // No yes that the bounds deny; a doubt below says how wide they are.
            boolean told = !(bestPct(p) > Limits.WATCH_PCT);
            String start = sum.hasTarget()
                    ? (told ? "Yes, by the meters: every row put on " : "As the meters read: every row put on ")
                    : (told ? "Alike, by the meters: every row is at " : "As the meters read: every row is at ");
            return start + its + basis + " within 5%. The widest is row " + widest.row + " at "
                    + f.signedPercent(widest.pct) + ".";
        }
        StringBuilder text = new StringBuilder(act.isEmpty() ? "Nearly, by the meters: " : "No, by the meters: ");
        if (!act.isEmpty()) {
            text.append(some(act, evaluated))
                    .append(" more than 10% off ")
                    .append(its(sum, act))
                    .append(basis);
            text.append(": ").append(named(act));
        }
        if (!watch.isEmpty()) {
            text.append(act.isEmpty() ? "" : ". ").append(act.isEmpty() ? some(watch, evaluated) : more(watch));
            text.append(" 5 to 10% off");
            if (act.isEmpty()) {
                text.append(' ').append(its(sum, watch)).append(basis);
            }
            text.append(": ").append(named(watch));
        }
        int fine = evaluated - act.size() - watch.size();
        return text + (fine > 0 ? ". The other " + fine + (fine == 1 ? " is" : " are") + " within 5%." : ".");
    }

    private static String its(ProductSums sum, List<Off> rows) {
        if (!sum.hasTarget()) {
            return "the ";
        }
        return rows.size() == 1 ? "its " : "their ";
    }

    private static String some(List<Off> rows, int of) {
        return rows.size() + " of " + of + " rows " + (rows.size() == 1 ? "is" : "are");
    }

    private static String more(List<Off> rows) {
        return rows.size() + " more " + (rows.size() == 1 ? "is" : "are");
    }

    private String named(List<Off> rows) {
        List<Off> worst = new ArrayList<>(rows);
        worst.sort(Comparator.comparingDouble((Off off) -> -Math.abs(off.pct)).thenComparingInt(Off::row));
        StringBuilder text = new StringBuilder();
        int named = Math.min(Limits.ROWS_IN_A_SENTENCE, worst.size());
        for (int i = 0; i < named; i++) {
            Off off = worst.get(i);
            text.append(i == 0 ? "" : ", ")
                    .append("row ")
                    .append(off.row)
                    .append(" at ")
                    .append(f.signedPercent(off.pct));
        }
        return text + (worst.size() > named ? " and " + (worst.size() - named) + " more" : "");
    }

    private String ground() {
        Coverage c = job.coverage();
        if (c.coveredAreaM2() <= 0) {
            return "No ground was covered: no row delivered while the bar was working.";
        }
        CoveragePhrases skips = CoverageSectionBuilder.skips(c, job.intervals(), messages);
        CoveragePhrases overlaps = CoverageSectionBuilder.overlap(c, job.intervals(), messages);
        String nothing =
                c.boundary() == null ? "No enclosed ground was skipped" : "No ground inside the boundary was skipped";
        String skipped = skips.none() ? nothing : skips.sentence("skipped");
        String overlap = overlaps.none() ? "none was doubled" : overlaps.sentence("doubled");
        ReceivedStatistics first = c.received().get(0);
        String onRate = Double.isFinite(first.within10Pct()) && c.received().size() == 1
                ? f.percent(first.within10Pct()) + " of the covered ground received within 10% of its target. "
                : "";
        return onRate + skipped + "; " + overlap + ".";
    }

    // BRIDGE
    public ReviewSummary(Analysis a, UnitFormat f, List<ProductSums> sums) {
        this(JobView.of(a), a.setup().contradicted(), SetbackSection.of(a, f), Messages.english(f));
    }
    // END BRIDGE
}
