package io.rowledger.report.review;

import java.util.List;

/**
 * What-if in the reader's units: the same drive with other machinery or another speed.
 *
 * @param lines per alternative that would have changed something the log can show
 * @param hasMoney true if a price was entered
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

    /** True if there is anything to compare. */
    public boolean hasLines() {
        return !lines.isEmpty();
    }

    /** True if there is anything to print. */
    public boolean any() {
        return hasLines() || !notShown.isEmpty();
    }

    /**
     * One alternative against what happened.
     *
     * @param what it is
     * @param liquid used less or more
     * @param nitrogen in it
     * @param ground overlap, skips or ground off target, less or more
     * @param money what the liquid cost, currency by currency, or a dash
     */
    public record Line(String what, String liquid, String nitrogen, String ground, String money) {}
}
