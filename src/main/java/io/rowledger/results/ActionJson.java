package io.rowledger.results;

import io.rowledger.analysis.Analysis;
import java.util.List;

/**
 * What to do next.
 *
 * @param rows rows it concerns, from 1 at the left
 * @param places skips and overlaps it concerns, by their names
 */
record ActionJson(String text, List<Integer> rows, List<String> places) {
    static List<ActionJson> of(Analysis a) {
        return List.of();
    }
}
