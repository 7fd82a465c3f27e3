package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import io.rowledger.finding.FindingKind;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Rows that follow the speed late, and what hunts by itself, on flows written down by hand. */
class HandMadeResponseTest extends HandMadeCase {
    /** The speed swings by this share. */
    private static final double SWING = 0.15;

    private static final double TAU_S = 6;

    /**
     * Rows that follow y' = (x - y)/τ. A speed of 1 + s · sin(ωt) they follow, once settled, with
     * 1 + s · (sin(ωt) - ωτ · cos(ωt)) / (1 + ω²τ²).
     */
    private static Flow slow(Set<Integer> rows, double periodS) {
        double perS = 2 * Math.PI / periodS;
        double lag = perS * TAU_S;
        return (row, timeS, due) -> {
            double phase = perS * (timeS % HandMadeFlows.PERIOD_S);
            double follows = (Math.sin(phase) - lag * Math.cos(phase)) / (1 + lag * lag);
            return rows.contains(row) ? due * (1 + SWING * follows) / (1 + SWING * Math.sin(phase)) : due;
        };
    }

    @Test
    void every_slow_row_is_told_and_none_hunts_where_the_speed_swings() {
        double periodS = 16;
        Diagnosis diagnosis = new HandMadeFlows(slow(Set.of(3, 6), periodS))
                .swinging(SWING)
                .within(periodS)
                .diagnose(folder);
        assertEquals(Set.of("SLOW_RESPONSE[3]", "SLOW_RESPONSE[6]"), kinds(diagnosis), FaultField.brief(diagnosis));
        assertEquals(TAU_S, diagnosis.figures().get(0).get(0).value(), 1.5);
    }

    @Test
    void a_slow_row_that_hunts_as_well_is_told_both() {
        Flow slow = slow(Set.of(3), 16);
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) ->
                        slow.galPerMin(row, t, due) * (row == 3 ? 1 + 0.15 * Math.sin(2 * Math.PI * t / 5) : 1))
                .swinging(SWING)
                .within(16)
                .diagnose(folder);
        assertEquals(Set.of("SLOW_RESPONSE[3]", "HUNTING[3]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void a_bar_that_swings_within_12_s_hunts() {
        assertEquals(Set.of("HUNTING[]"), kinds(swings(12)));
    }

    @Test
    void a_bar_that_drifts_to_and_fro_within_21_s_is_no_hunting_bar() {
        // Longer than any period that is looked for: the longest of them explains the most, and not by itself.
        Diagnosis diagnosis = swings(21);
        assertTrue(
                diagnosis.findings().stream().noneMatch(f -> f.kind() == FindingKind.HUNTING),
                () -> FaultField.brief(diagnosis));
    }

    private Diagnosis swings(double periodS) {
        return new HandMadeFlows((row, t, due) -> due * (1 + 0.15 * Math.sin(2 * Math.PI * t / periodS)))
                .diagnose(folder);
    }

    /** Fixes scatter by 0.2 m and no speed is logged: what the speed asks of the bar is not known, what the other rows give is. */
    private Diagnosis withoutSpeed(Set<Integer> slowRows) {
        double periodS = 40;
        return new HandMadeFlows(slow(slowRows, periodS))
                .swinging(SWING)
                .within(periodS)
                .withoutSpeed(0.2)
                .diagnose(folder);
    }

    @Test
    void a_slow_row_is_told_beside_the_others_where_the_speed_is_not_known() {
        Diagnosis diagnosis = withoutSpeed(Set.of(3));
        assertEquals(Set.of("SLOW_RESPONSE[3]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void rows_that_all_follow_alike_are_not_slow_there() {
        Diagnosis diagnosis = withoutSpeed(Set.of());
        assertEquals(Set.of(), kinds(diagnosis), FaultField.brief(diagnosis));
    }
}
