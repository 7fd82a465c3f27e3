package io.rowledger.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

class MeterFaultTest {
    private static Finding unsure(FindingKind kind) {
        Message none = Message.of("findings.none");
        return new Finding(kind, List.of(3, 4), 0, 60, 0.5, 0, 0, 0, 41, -93, none, none, none, List.of());
    }

    @ParameterizedTest
    @EnumSource
    void a_kind_may_mean_a_meters_fault_if_an_unsure_finding_of_two_rows_does(FindingKind kind) {
        assertEquals(MeterFault.of(unsure(kind), List.of(0), false).isPresent(), MeterFault.mayMean(kind));
    }

    @ParameterizedTest
    @EnumSource(
            mode = Mode.INCLUDE,
            names = {"NO_TURN_COMPENSATION", "SUPPLY_LIMITED", "SUPPLY_FAILING", "RAN_EMPTY", "LATE_ON", "EARLY_OFF"})
    void meters_read_right_what_turns_supply_and_valves_gave(FindingKind kind) {
        assertFalse(MeterFault.mayMean(kind));
    }

    @ParameterizedTest
    @EnumSource(
            mode = Mode.INCLUDE,
            names = {"METER_SCALE", "METER_STUCK", "METER_DROPOUT", "CHANNELS_SWAPPED"})
    void a_meter_at_fault_is_one(FindingKind kind) {
        assertTrue(MeterFault.mayMean(kind));
    }
}
