package io.rowledger.report.findings;

import io.rowledger.finding.Finding;
import io.rowledger.uncertainty.Interval;

/**
 * The 90 % intervals of what a finding affected, see {@link FindingUncertainties}.
 *
 * @param areaM2 ground, m²
 * @param volumeL liquid, L
 * @param nitrogenKg nitrogen, kg
 */
public record FindingUncertainty(Interval areaM2, Interval volumeL, Interval nitrogenKg) {
    /** The values of the finding without bounds. */
    public static FindingUncertainty unknown(Finding finding) {
        return new FindingUncertainty(
                Interval.unknown(finding.areaM2()),
                Interval.unknown(finding.volumeL()),
                Interval.unknown(finding.nitrogenKg()));
    }
}
