package io.rowledger.diagnose;

import io.rowledger.finding.Finding;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Runs every detector on a job. */
public final class Diagnoses {
    /**
     * In this order: what only the meter does comes first and is taken out of the judgement, then crossed channels, then
     * levels (the whole-bar pattern before single rows), then timing and the bar as a whole.
     */
    private static final List<Detector> DETECTORS = List.of(
            new MeterStuckDetector(),
            new ChannelsSwappedDetector(),
            new MeterDropoutDetector(),
            new OutsideShareDetector(),
            new PluggedDetector(),
            new MeterScaleDetector(),
            new RestrictedDetector(),
            new LeakingDetector(),
            new LateOnDetector(),
            new EarlyOffDetector(),
            new NoTurnCompensationDetector(),
            new SupplyLimitedDetector(),
            new SlowResponseDetector(),
            new HuntingDetector());

    private Diagnoses() {}

    /** A case of a product with its finding and window. */
    private record Placed(Case found, Finding finding, OnsetWindow window) {}

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
        List<Placed> placed = new ArrayList<>();
        for (int p = 0; p < delivery.products(); p++) {
            Signals signals = new Signals(p, work, rig, judged, delivery);
            List<TurnShares.Block> turns = TurnShares.fill(signals);
            signals.computeRatios();
            pictures.add(new Bins(work).picture(signals.ratio));
            Evidence evidence = new Evidence(log, strips, delivery, signals, turns);
            for (Detector detector : DETECTORS) {
                evidence.add(detector.find(evidence));
            }
            Costs costs = new Costs(evidence, track, rig.products().get(p).nitrogenKgPerL());
            for (Case found : Reconciled.of(evidence.cases())) {
                placed.add(new Placed(found, costs.finding(found), costs.window(found)));
            }
        }
        placed.sort(Comparator.comparingDouble(x -> -x.found.confidence()));
        return new Diagnosis(
                placed.stream().map(Placed::finding).toList(),
                placed.stream().map(Placed::window).toList(),
                placed.stream().map(x -> x.found.figures()).toList(),
                pictures,
                List.of(),
                List.of());
    }
}
