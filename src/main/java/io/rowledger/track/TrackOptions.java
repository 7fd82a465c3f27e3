package io.rowledger.track;

/**
 * Limits of the reconstruction of the path.
 *
 * @param maxStepM longest step between poses, m: at 1 Hz in a turn, chords between raw fixes cut the corner
 * @param sagittaM largest sagitta of the towing chain's chords against the antenna's curve, m
 * @param maxBridgeIntervals time between records up to which missing records are bridged, in median intervals
 * @param maxBridgeS time between records that is bridged whatever the logging rate, s
 * @param minWorkMps speed above which a lowered bar is working, m/s: below it position noise can't be told from motion
 * @param threads threads for smoothing; the result is the same for any number
 */
public record TrackOptions(
        double maxStepM,
        double sagittaM,
        double maxBridgeIntervals,
        double maxBridgeS,
        double minWorkMps,
        int threads) {
    /** Returns the default limits, with one thread. */
    public static TrackOptions defaults() {
        return new TrackOptions(0.5, 0.0002, 2.5, 1.5, 0.1, 1);
    }

    /** Returns these limits with another number of threads. */
    public TrackOptions withThreads(int threads) {
        return new TrackOptions(maxStepM, sagittaM, maxBridgeIntervals, maxBridgeS, minWorkMps, threads);
    }
}
