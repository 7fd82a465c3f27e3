package io.rowledger.results;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.report.answer.NextActions;
import io.rowledger.report.common.JobView;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import io.rowledger.whatif.WhatIf;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;

/**
 * What to do next, in US English and US units as all text in the files.
 *
 * @param kind {@code check}, {@code drive} or {@code change}
 * @param title a few words
 * @param rows rows it concerns, from 1 at the left
 * @param places skips and overlaps it concerns, by their names; skips in the best order of stops
 */
record ActionJson(String kind, String title, String text, List<Integer> rows, List<String> places) {
    static List<ActionJson> of(JobView job, List<Finding> findings, FindingUncertainties uncertainties, WhatIf whatIf) {
        Messages messages = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        return NextActions.of(job, findings, uncertainties, whatIf, messages).actions().stream()
                .map(action -> new ActionJson(
                        action.kind().name().toLowerCase(Locale.ROOT),
                        action.title(),
                        action.text(),
                        action.rows(),
                        action.places()))
                .toList();
    }
}
