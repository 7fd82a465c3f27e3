package io.rowledger.diagnose.setup;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Reads the setup's measures out of a log. */
public final class SetupChecks {
    private SetupChecks() {}

    /** All measures that a log can tell of. */
    public static SetupCheck of(LogTable log, Rig rig, Track track) {
        List<Measure> measures = new ArrayList<>();
        for (int p = 0; p < rig.products().size(); p++) {
            measures.add(FlowLag.of(log, rig.products().get(p), p, track.quality().medianIntervalS()));
        }
        measures.add(DropOffset.of(log, rig, track));
        measures.add(SideOffset.of(rig, track));
        return new SetupCheck(measures);
    }
}
