package io.rowledger.analysis;

import io.rowledger.coverage.sections.OffReasons.Fault;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Findings that explain rows without flow. */
final class RowFaults {
    /** Confidence from which a finding explains a row without flow (1): more likely right than not. */
    private static final double MIN_CONFIDENCE = 0.5;

    private static final Set<FindingKind> METER = EnumSet.of(FindingKind.METER_DROPOUT, FindingKind.METER_STUCK);
    private static final Set<FindingKind> ROW =
            EnumSet.of(FindingKind.PLUGGED, FindingKind.INTERMITTENT, FindingKind.RESTRICTED, FindingKind.RAN_EMPTY);

    private RowFaults() {}

    static List<Fault> of(List<Finding> findings) {
        return findings.stream()
                .filter(f -> f.confidence() >= MIN_CONFIDENCE && (METER.contains(f.kind()) || ROW.contains(f.kind())))
                .map(f -> new Fault(METER.contains(f.kind()), f.rows(), f.fromS(), f.toS()))
                .toList();
    }
}
