package io.rowledger.results;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.NextActions;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;

/**
 * What to do next, in US English and US units as all text in the files.
 *
 * @param rows rows it concerns, from 1 at the left
 * @param places skips and overlaps it concerns, by their names
 */
record ActionJson(String text, List<Integer> rows, List<String> places) {
    static List<ActionJson> of(Analysis a) {
        Messages messages = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        return NextActions.of(a.findings(), a.coverage(), a.rates(), messages).stream()
                .map(action -> new ActionJson(action.text(), action.rows(), action.places()))
                .toList();
    }
}
