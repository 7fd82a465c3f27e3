package io.rowledger.report.review;

import java.util.List;

/**
 * What would have been, in the reader's units: the same drive with other machinery or another speed.
 *
 * @param lines per alternative that would have changed something the log can show
 * @param hasMoney true where a price was entered, so that there is a column for it
 * @param assumes what the lines assume, a sentence or two each
 * @param notShown what would have changed nothing the log can show, and what it can't tell, a sentence each
 * @param cannotKnow what no log knows
 */
public record WhatIfSection(
        List<Line> lines, boolean hasMoney, List<String> assumes, List<String> notShown, String cannotKnow) {
    /** Copies the lists. */
    public WhatIfSection {
        lines = List.copyOf(lines);
        assumes = List.copyOf(assumes);
        notShown = List.copyOf(notShown);
    }

    /** True where there is anything to compare. */
    public boolean hasLines() {
        return !lines.isEmpty();
    }

    /** True where anything was asked. */
    public boolean any() {
        return hasLines() || !notShown.isEmpty();
    }

    /**
     * One alternative against what happened.
     *
     * @param what it is
     * @param liquid used less or more
     * @param nitrogen in it
     * @param ground done twice, skipped or off target less or more
     * @param money what the liquid cost, currency by currency, or a dash
     */
    public record Line(String what, String liquid, String nitrogen, String ground, String money) {}
}
