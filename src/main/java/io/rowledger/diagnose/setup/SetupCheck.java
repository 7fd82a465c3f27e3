package io.rowledger.diagnose.setup;

import io.rowledger.rig.RigCorrection;
import io.rowledger.units.Dimension;
import java.util.List;

/**
 * The rig file's setup parameters as the log shows them.
 *
 * @param measurements flow lags in rig order, then drop offset, side offset, antenna, wheels, outside share, row order; empty
 *     if nothing was checked
 */
public record SetupCheck(List<SetupMeasurement> measurements) {
    /** Copies the list. */
    public SetupCheck {
        measurements = List.copyOf(measurements);
    }

    /** Returns a check without measurements. */
    public static SetupCheck none() {
        return new SetupCheck(List.of());
    }

    /** Returns the measurements that contradict the rig file. */
    public List<SetupMeasurement> differing() {
        return measurements.stream().filter(SetupMeasurement::differs).toList();
    }

    /**
     * Returns the rig file values that {@code --apply-setup-check} replaces. Outside share and row order are not among them: a
     * wrong orifice or a crossed hose looks the same in the log, and the rig file is right then.
     */
    public List<RigCorrection.Change> changes() {
        return differing().stream()
                .filter(m -> m.parameter() != SetupParameter.OUTSIDE_SHARE && m.parameter() != SetupParameter.ROW_ORDER)
                .map(m -> new RigCorrection.Change(
                        m.key(),
                        m.estimate(),
                        m.parameter() == SetupParameter.FLOW_LAG ? Dimension.TIME : Dimension.LENGTH))
                .toList();
    }
}
