package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.finding.FindingKind;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Drops cases that a surer one explains: a row that swings or lags runs beside its other rows for a while as well. */
public final class CaseFilter {
    private static final Set<FindingKind> LEVELS = EnumSet.of(FindingKind.RESTRICTED, FindingKind.LEAKING);
    private static final Set<FindingKind> MOVING = EnumSet.of(FindingKind.SLOW_RESPONSE, FindingKind.HUNTING);

    /** A change of level that lasts longer is one of its own, s. */
    private static final double BRIEF_S = 240;

    private CaseFilter() {}

    public static List<Case> of(List<Case> cases) {
        return cases.stream()
                .filter(found -> cases.stream().noneMatch(other -> explains(other, found)))
                .toList();
    }

    private static boolean explains(Case moving, Case level) {
        return MOVING.contains(moving.kind())
                && LEVELS.contains(level.kind())
                && !moving.rows().isEmpty()
                && moving.rows().containsAll(level.rows())
                && moving.fromS() < level.toS()
                && level.fromS() < moving.toS()
                && level.toS() - level.fromS() < BRIEF_S;
    }
}
