package io.rowledger.sim;

import java.nio.file.Path;

/** A job without faults: four passes of a carried bar of six rows, RTK, level ground. */
public final class SmallJob {
    private SmallJob() {}

    /** Writes {@code log.csv}, {@code rig.yaml} and {@code boundary.geojson} into a folder; passes are as long as given, m. */
    public static void writeTo(Path folder, long seed, double passM) {
        SimRig bar = SimRig.carried(6);
        new Scenario(seed, bar, PassPlan.rectangle(passM, 4, 0, bar.widthM()))
                .gnss(GnssModel.rtk(2))
                .withoutGround()
                .run()
                .writeTo(folder);
    }
}
