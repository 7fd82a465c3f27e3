package io.rowledger.report.review;

import io.rowledger.analysis.SetupReview;
import io.rowledger.finding.Finding;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.JobView;
import io.rowledger.report.findings.FindingProducts;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.setback.Setbacks;
import io.rowledger.strip.Strips;
import io.rowledger.whatif.WhatIf;
import io.rowledger.zones.Zones;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the pass review takes from an analysis.
 *
 * @param job machine, log, path, rates, coverage and uncertainty
 * @param strips the ground of each row in each step
 * @param times when the work was done
 * @param findings most certain first
 * @param findingProducts in which products a finding shows
 * @param uncertainties of the findings' ground and liquid
 * @param setup the rig file compared with the log
 * @param setbacks what was applied within setbacks; null if no keep-out file was given
 * @param zones the prescription compared with the work; null without one
 * @param whatIf the same drive with other machinery or another speed
 * @param warnings notes that put the figures of the first page in question
 * @param notes of the analysis
 * @param limits what the log can resolve, one sentence each
 */
record ReviewInput(
        JobView job,
        Strips strips,
        JobTimes times,
        List<Finding> findings,
        FindingProducts findingProducts,
        FindingUncertainties uncertainties,
        SetupReview setup,
        @Nullable Setbacks setbacks,
        @Nullable Zones zones,
        WhatIf whatIf,
        List<String> warnings,
        List<String> notes,
        List<String> limits) {
    ReviewInput {
        findings = List.copyOf(findings);
        warnings = List.copyOf(warnings);
        notes = List.copyOf(notes);
    }
}
