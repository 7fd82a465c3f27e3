package io.rowledger.report.common;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;

// BRIDGE
public final class FaultWords {
    private static final Messages ENGLISH = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));

    private FaultWords() {}

    public static String clause(Finding finding) {
        return ENGLISH.text(FindingTitles.of(finding));
    }

    public static String clause(FindingKind kind, List<Integer> rows) {
        return ENGLISH.text(FindingTitles.of(kind, rows));
    }

    public static String lookedFor() {
        return ENGLISH.text(FindingTitles.lookedFor());
    }
}
