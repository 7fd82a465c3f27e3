package io.rowledger.diagnose.setup;

import io.rowledger.rig.RigCorrection;
import io.rowledger.units.Dimension;
import java.util.List;

/**
 * What the log says about the setup.
 *
 * @param measures one by one: flow lags in rig order, drop line, side, antenna, wheels, outside share, row order; empty where
 *     nothing was checked
 */
public record SetupCheck(List<SetupParameter> measures) {
    /** Copies the list. */
    public SetupCheck {
        measures = List.copyOf(measures);
    }

    /** Nothing was checked. */
    public static SetupCheck none() {
        return new SetupCheck(List.of());
    }

    /** Those that the log contradicts. */
    public List<SetupParameter> differing() {
        return measures.stream().filter(SetupParameter::differs).toList();
    }

    /**
     * The figures of the rig file that the log would change. Outside share and row order are not among them: an orifice or a
     * hose looks the same there, and neither is a matter of a tape.
     */
    public List<RigCorrection.Change> changes() {
        return differing().stream()
                .filter(m -> m.what() != SetupMeasurement.OUTSIDE_SHARE && m.what() != SetupMeasurement.ROW_ORDER)
                .map(m -> new RigCorrection.Change(
                        m.key(), m.is(), m.what() == SetupMeasurement.FLOW_LAG ? Dimension.TIME : Dimension.LENGTH))
                .toList();
    }
}
