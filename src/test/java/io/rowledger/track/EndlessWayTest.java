package io.rowledger.track;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogTable;
import io.rowledger.rate.SteadyMotion;
import io.rowledger.rig.Rig;
import org.junit.jupiter.api.Test;

class EndlessWayTest {
    /** Twelve records nine minutes apart, the tenth 1000 km away: in steps of half a meter four million. */
    @Test
    void records_minutes_apart_with_a_position_far_away_are_refused_and_not_cut_into_steps() {
        LogTable log = TestLogs.along(t -> new double[] {t == 9 * 540 ? 1e6 : 0, t / 540}, 12, 1 / 540.0, 1, 0.02);
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(1), 0.01, 0);
        String message = assertThrows(
                        UnusableInputException.class, () -> TrackBuilder.build(log, rig, TrackOptions.defaults()))
                .getMessage();
        assertTrue(message.contains("km in 12 records"), message);
    }
}
