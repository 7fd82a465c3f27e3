package io.rowledger.uncertainty;

import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import java.util.List;

/**
 * What the figures were computed from, and what the diagnosis says about the meters.
 *
 * @param log the usable records
 * @param rig the machine
 * @param track poses and passes
 * @param strips the strips between the poses
 * @param delivery what left each outlet in each step
 * @param faults meters that the diagnosis puts in question
 * @param lateS by product, how much later the log shows its flow than the rig file's lag says, s; 0 where it contradicts nothing
 */
public record UncertaintyInputs(
        LogTable log,
        Rig rig,
        Track track,
        Strips strips,
        Delivery delivery,
        List<MeterFault> faults,
        List<Double> lateS) {
    /** Copies the lists. */
    public UncertaintyInputs {
        faults = List.copyOf(faults);
        lateS = List.copyOf(lateS);
    }
}
