package io.rowledger.diagnose;

import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.finding.Finding;
import java.util.List;

/**
 * What the rows' flows say about the machine.
 *
 * @param findings what is probably wrong, most certain first
 * @param windows the stretch around each finding's onset, for a chart: {@code windows.get(i)} belongs to
 *     {@code findings.get(i)}
 * @param figures the figures of each finding that need a unit, in the same order; lists may be empty
 * @param pictures deviation by row and time, one per product in rig order
 * @param baselines what each row is like when healthy, one per product and row: products in rig order, rows from the left
 * @param notes what could not be evaluated and why, one sentence each
 */
public record Diagnosis(
        List<Finding> findings,
        List<OnsetWindow> windows,
        List<List<Figure>> figures,
        List<RowTime> pictures,
        List<RowBaseline> baselines,
        List<String> notes) {
    /** Copies the lists and checks that every finding has its window. */
    public Diagnosis {
        findings = List.copyOf(findings);
        windows = List.copyOf(windows);
        figures = figures.stream().map(List::copyOf).toList();
        pictures = List.copyOf(pictures);
        baselines = List.copyOf(baselines);
        notes = List.copyOf(notes);
        if (windows.size() != findings.size() || figures.size() != findings.size()) {
            throw new IllegalArgumentException(findings.size() + " findings with " + windows.size() + " windows and "
                    + figures.size() + " lists of figures");
        }
    }
}
