package io.rowledger.report.sections;

import io.rowledger.report.common.Fact;
import io.rowledger.report.common.InputFileLine;
import java.util.List;

/**
 * Records, checks, notes and measures that the figures rest on.
 *
 * @param files per log
 * @param facts records, fixes, gaps, unsettled ground
 * @param machine the lengths of the rig file
 * @param checks sums that must agree
 * @param notes what was assumed
 * @param areas how the areas were computed
 * @param sure what the bounds of the figures include, one paragraph; empty without bounds
 */
public record QualitySection(
        List<InputFileLine> files,
        List<Fact> facts,
        List<Fact> machine,
        List<Fact> checks,
        List<String> notes,
        String areas,
        String sure) {
    /** Copies the lists. */
    public QualitySection {
        files = List.copyOf(files);
        facts = List.copyOf(facts);
        machine = List.copyOf(machine);
        checks = List.copyOf(checks);
        notes = List.copyOf(notes);
    }

    /** True if there are notes. */
    public boolean hasNotes() {
        return !notes.isEmpty();
    }
}
