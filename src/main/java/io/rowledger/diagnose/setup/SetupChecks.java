package io.rowledger.diagnose.setup;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import io.rowledger.rig.Rig;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Reads the setup's measurements out of a log. */
public final class SetupChecks {
    private SetupChecks() {}

    /**
     * All measurements that a log can tell of, and why not where it can't.
     *
     * @param log usable records
     * @param rig the machine as set up
     * @param track poses and passes by that setup
     * @param diagnosis what the rows' flows say: outside share and row order come from there
     */
    public static SetupCheck of(LogTable log, Rig rig, Track track, Diagnosis diagnosis) {
        List<SetupMeasurement> measurements = new ArrayList<>();
        for (int p = 0; p < rig.products().size(); p++) {
            measurements.add(
                    FlowLag.of(log, rig.products().get(p), p, track.quality().medianIntervalS()));
        }
        SetupMeasurement antenna = AntennaAhead.of(log, rig, track);
        measurements.add(DropOffset.of(log, rig, track, antenna));
        measurements.add(SideOffset.of(rig, track));
        measurements.add(antenna);
        measurements.addAll(RowMeasures.wheels(rig));
        boolean perRow = log.metering() == Metering.PER_ROW && log.isTimed();
        measurements.add(
                perRow ? RowMeasures.outsideShare(rig, diagnosis) : RowMeasures.untold(SetupParameter.OUTSIDE_SHARE));
        measurements.add(perRow ? RowMeasures.rowOrder(diagnosis) : RowMeasures.untold(SetupParameter.ROW_ORDER));
        return new SetupCheck(measurements);
    }
}
