package io.rowledger.diagnose.setup;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Reads the setup's measures out of a log. */
public final class SetupChecks {
    private SetupChecks() {}

    /**
     * All measures that a log can tell of, and why not where it can't.
     *
     * @param log usable records
     * @param rig the machine as set up
     * @param track poses and passes by that setup
     * @param diagnosis what the rows' flows say: outside share and row order come from there
     */
    public static SetupCheck of(LogTable log, Rig rig, Track track, Diagnosis diagnosis) {
        List<SetupParameter> measures = new ArrayList<>();
        for (int p = 0; p < rig.products().size(); p++) {
            measures.add(
                    FlowLag.of(log, rig.products().get(p), p, track.quality().medianIntervalS()));
        }
        SetupParameter antenna = AntennaAhead.of(log, rig, track);
        measures.add(DropOffset.of(log, rig, track, antenna));
        measures.add(SideOffset.of(rig, track));
        measures.add(antenna);
        measures.addAll(RowMeasures.wheels(rig));
        measures.add(RowMeasures.outsideShare(rig, diagnosis));
        measures.add(RowMeasures.rowOrder(diagnosis));
        return new SetupCheck(measures);
    }
}
