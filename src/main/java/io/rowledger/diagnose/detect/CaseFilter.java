package io.rowledger.diagnose.detect;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.finding.FindingKind;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Drops cases that a surer one explains: a row that swings or lags runs beside its other rows for a while as well, and by as much
 * as it swings; and a bar whose sum stays level at its limit swings against a target that goes up and down.
 */
public final class CaseFilter {
    private static final Set<FindingKind> LEVELS = EnumSet.of(FindingKind.RESTRICTED, FindingKind.LEAKING);
    private static final Set<FindingKind> MOVING = EnumSet.of(FindingKind.SLOW_RESPONSE, FindingKind.HUNTING);

    /** A change of level that lasts longer is one of its own, s. */
    private static final double BRIEF_S = 240;

    private CaseFilter() {}

    public static List<Case> of(List<Case> cases) {
        return cases.stream()
                .filter(found ->
                        cases.stream().noneMatch(other -> explains(other, found) || isAtItsLimit(other, found)))
                .toList();
    }

    private static boolean explains(Case moving, Case level) {
        return MOVING.contains(moving.kind())
                && LEVELS.contains(level.kind())
                && !moving.rows().isEmpty()
                && moving.rows().containsAll(level.rows())
                && moving.fromS() < level.toS()
                && level.fromS() < moving.toS()
                && (level.toS() - level.fromS() < BRIEF_S || swings(moving, level));
    }

    /** True for a row that hunts by more than it is off. */
    private static boolean swings(Case hunting, Case level) {
        return hunting.kind() == FindingKind.HUNTING
                && Math.abs(level.figures().get(0).value() - 1)
                        < hunting.figures().get(1).value();
    }

    /** True where the bar's swings lie within the time in which its supply is at its limit, for half of them at least. */
    private static boolean isAtItsLimit(Case limited, Case hunting) {
        double bothS = Math.min(limited.toS(), hunting.toS()) - Math.max(limited.fromS(), hunting.fromS());
        return limited.kind() == FindingKind.SUPPLY_LIMITED
                && hunting.kind() == FindingKind.HUNTING
                && hunting.rows().isEmpty()
                && 2 * bothS >= hunting.toS() - hunting.fromS();
    }
}
