package io.rowledger.diagnose;

import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.rate.DeviationLimits;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What the rows' flows say about the machine.
 *
 * @param findings what is probably wrong, what cost most liquid first, then what cost nothing
 * @param windows the time around each finding's onset, for a chart: {@code windows.get(i)} belongs to
 *     {@code findings.get(i)}
 * @param figures the figures of each finding that need a unit, in the same order; lists may be empty
 * @param alsoNoticed for each finding, true if it cost next to nothing and needs no place among the answers
 * @param unexplained rows, or the bar, off by more than the log resolves without a recognized cause
 * @param limits what the log can resolve, one sentence each
 * @param resolvable smallest deviation of a row that this log can show, as a fraction
 * @param pictures deviation by row and time, one per product in rig order
 * @param baselines what each row is like when healthy, one per product and row: products in rig order, rows from the left
 * @param notes what could not be evaluated and why, one sentence each
 */
public record Diagnosis(
        List<Finding> findings,
        List<OnsetWindow> windows,
        List<List<Figure>> figures,
        List<Boolean> alsoNoticed,
        List<Deviation> unexplained,
        List<Message> limits,
        double resolvable,
        List<RowTime> pictures,
        List<RowBaseline> baselines,
        List<Message> notes) {
    /** Key of the note that the bar drove at working speed without flow, in a log without a work state. */
    static final String DRIVEN_WITHOUT_FLOW = "findings.note.drivenWithoutFlow";

    /** Rows and bars within this of the others and the target need no word, as a fraction. */
    private static final double MAX_UNTOLD = 0.08;

    /** Fraction of a finding's time in which its rows must be off for it to show in another product; common practice, no source. */
    private static final double MIN_OFF_SHARE = 0.2;

    /** Copies the lists and checks that every finding has its window, figures and flag. */
    public Diagnosis {
        findings = List.copyOf(findings);
        windows = List.copyOf(windows);
        figures = figures.stream().map(List::copyOf).toList();
        alsoNoticed = List.copyOf(alsoNoticed);
        unexplained = List.copyOf(unexplained);
        limits = List.copyOf(limits);
        pictures = List.copyOf(pictures);
        baselines = List.copyOf(baselines);
        notes = List.copyOf(notes);
        if (windows.size() != findings.size()
                || figures.size() != findings.size()
                || alsoNoticed.size() != findings.size()) {
            throw new IllegalArgumentException(findings.size() + " findings with " + windows.size() + " windows, "
                    + figures.size() + " lists of figures and " + alsoNoticed.size() + " flags");
        }
    }

    /** A diagnosis in which every finding counts, nothing is unexplained and the log has no limits to report. */
    public Diagnosis(
            List<Finding> findings,
            List<OnsetWindow> windows,
            List<List<Figure>> figures,
            List<RowTime> pictures,
            List<RowBaseline> baselines,
            List<Message> notes) {
        this(
                findings,
                windows,
                figures,
                findings.stream().map(finding -> false).toList(),
                List.of(),
                List.of(),
                0,
                pictures,
                baselines,
                notes);
    }

    /** No row was evaluated, for this reason. */
    public static Diagnosis notEvaluated(Message why) {
        return new Diagnosis(
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                1,
                List.of(),
                List.of(),
                List.of(why));
    }

    /**
     * True if nothing was found to act on, nothing is unexplained, the log would have shown a row 8 % off, and the bar did not
     * drive on without flow in a log that doesn't tell whether it should have applied there.
     */
    public boolean allClear() {
        boolean idle = notes.stream().anyMatch(note -> note.key().equals(DRIVEN_WITHOUT_FLOW));
        return !alsoNoticed.contains(false) && unexplained.isEmpty() && resolvable <= MAX_UNTOLD && !idle;
    }

    /**
     * Products, from 0, in which finding i shows, its own always: a cause common to several products, such as a row's hose or
     * valve, is one finding.
     */
    public List<Integer> productsOf(int i) {
        Finding finding = findings.get(i);
        if (finding.kind() == FindingKind.DROP_OFFSET || finding.kind() == FindingKind.SIDE_OFFSET) {
            // The place of the bar is common to all products.
            return IntStream.range(0, pictures.size()).boxed().toList();
        }
        int own = windows.get(i).product();
        List<Integer> in = new ArrayList<>();
        for (int p = 0; p < pictures.size(); p++) {
            if (p == own || shows(pictures.get(p), finding)) {
                in.add(p);
            }
        }
        return in;
    }

    private static boolean shows(RowTime picture, Finding finding) {
        int evaluated = 0;
        int off = 0;
        for (int b = 0; b < picture.bins(); b++) {
            if (picture.endS(b) <= finding.fromS() || picture.startS(b) >= finding.toS()) {
                continue;
            }
            for (int row : finding.rows()) {
                double deviation = picture.deviation(row - 1, b);
                evaluated += Double.isNaN(deviation) ? 0 : 1;
                off += Math.abs(deviation) > DeviationLimits.WATCH ? 1 : 0;
            }
        }
        return evaluated > 0 && off >= MIN_OFF_SHARE * evaluated;
    }
}
