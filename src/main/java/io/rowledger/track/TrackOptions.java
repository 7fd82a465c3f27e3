package io.rowledger.track;

/**
 * Limits of the rebuilding, each with its reason.
 *
 * @param longestStepM longest step between poses, m: at 1 Hz in a turn, chords between raw fixes cut the corner
 * @param sagittaM how far a chord may cut inside the antenna's curve before the towing chain takes a shorter one, m
 * @param bridgeIntervals a silence up to this many usual intervals is an ordinary lost record and is bridged
 * @param bridgeS a silence up to this long is bridged whatever the logging rate, s
 * @param slowestWorkMps slower than this the bar stands, m/s: what fix noise can pretend
 * @param threads threads for smoothing; the result is the same for any number
 */
public record TrackOptions(
        double longestStepM,
        double sagittaM,
        double bridgeIntervals,
        double bridgeS,
        double slowestWorkMps,
        int threads) {
    /** The usual limits, on one thread. */
    public static TrackOptions defaults() {
        return new TrackOptions(0.5, 0.0002, 2.5, 1.5, 0.1, 1);
    }

    /** The same on more threads. */
    public TrackOptions withThreads(int threads) {
        return new TrackOptions(longestStepM, sagittaM, bridgeIntervals, bridgeS, slowestWorkMps, threads);
    }
}
