package io.rowledger.track;

import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Builds poses and passes from a log's fixes: projection, smoothing, towing, numbering of passes. */
public final class TrackBuilder {
    /** Largest speed of side-dressing, m/s (22 mph); common practice, no source. */
    private static final double MAX_WORK_MPS = 10;
    /** Largest distance of two fixes of a standing receiver, m. */
    private static final double NOISE_M = 2;

    private final LogTable log;
    private final Rig rig;
    private final TrackOptions options;

    private TrackBuilder(LogTable log, Rig rig, TrackOptions options) {
        this.log = log;
        this.rig = rig;
        this.options = options;
    }

    /**
     * Builds the track.
     *
     * @param log usable records in time order
     * @param rig lengths of the machine
     * @param options limits and threads
     * @return the track; without two successive records it has no poses
     */
    public static Track build(LogTable log, Rig rig, TrackOptions options) {
        return new TrackBuilder(log, rig, options).build();
    }

    private Track build() {
        int n = log.records();
        LocalPlane plane = planeOf(log);
        double[] east = new double[n];
        double[] north = new double[n];
        double[] out = new double[2];
        double[] time = new double[n];
        for (int i = 0; i < n; i++) {
            plane.forward(log.latDeg(i), log.lonDeg(i), out);
            east[i] = out[0];
            north[i] = out[1];
            time[i] = log.timeS(i);
        }
        double medianS = medianInterval(time);
        double maxBridgeS = Math.max(options.maxBridgeIntervals() * medianS, options.maxBridgeS());
        boolean[] gap = new boolean[n];
        boolean[] segment = new boolean[n];
        boolean[] apart = new boolean[n];
        for (int i = 0; i < n; i++) {
            gap[i] = i == 0 || time[i] - time[i - 1] > maxBridgeS;
            segment[i] = gap[i] || log.breakBefore(i);
        }
        boolean[] lowered = WorkStateEstimator.of(log, rig);
        boolean[] bridged = GapBridging.of(log, lowered, time, east, north, segment);
        FixNoise noise = FixNoise.of(log, east, north, segment, medianS);
        boolean[] shift = PositionSteps.of(log, time, east, north, segment, noise);
        for (int i = 0; i < n; i++) {
            bridged[i] &= gap[i];
            gap[i] &= !bridged[i];
            segment[i] |= shift[i];
            // One or two missing fixes are bridged, a shift of the position is not.
            apart[i] = gap[i] || shift[i] || (segment[i] && !bridged[i] && tooFar(east, north, time, i));
        }
        SmoothPath path = smooth(time, east, north, segment, bridged, noise);
        boolean[] headingHeld = Standstills.hold(log, path, segment, noise, options.minWorkMps());
        PoseColumns columns = new PoseTracer(path, apart, lowered, headingHeld, rig, options).trace();
        List<Pass> passes = numberPasses(columns, lowered);
        return new Track(
                plane,
                new Poses(columns),
                passes,
                quality(time, gap, medianS, noise),
                new Breaks(time, east, north, lowered).list(gap, apart, bridged));
    }

    /** Lists the breaks of the measured path. */
    private record Breaks(double[] time, double[] east, double[] north, boolean[] lowered) {
        List<PathBreak> list(boolean[] gap, boolean[] apart, boolean[] bridged) {
            List<PathBreak> breaks = new ArrayList<>();
            for (int i = 1; i < time.length; i++) {
                if (apart[i] || bridged[i]) {
                    PathBreak.Kind broken = gap[i] ? PathBreak.Kind.GAP : PathBreak.Kind.SHIFTED;
                    breaks.add(new PathBreak(
                            bridged[i] ? PathBreak.Kind.BRIDGED : broken,
                            time[i - 1],
                            time[i],
                            east[i - 1],
                            north[i - 1],
                            east[i],
                            north[i],
                            lowered[i - 1] || lowered[i]));
                }
            }
            return breaks;
        }
    }

    private static boolean tooFar(double[] east, double[] north, double[] time, int i) {
        double distanceM = Math.hypot(east[i] - east[i - 1], north[i] - north[i - 1]);
        return distanceM > MAX_WORK_MPS * (time[i] - time[i - 1]) + NOISE_M;
    }

    /** The plane whose origin is the middle of the log's extent. */
    public static LocalPlane planeOf(LogTable log) {
        double south = Double.POSITIVE_INFINITY;
        double west = Double.POSITIVE_INFINITY;
        double northMost = Double.NEGATIVE_INFINITY;
        double eastMost = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < log.records(); i++) {
            south = Math.min(south, log.latDeg(i));
            northMost = Math.max(northMost, log.latDeg(i));
            // Counted from the first fix, so that a field on the date line has its middle there too.
            double fromFirst = Math.IEEEremainder(log.lonDeg(i) - log.lonDeg(0), 360);
            west = Math.min(west, fromFirst);
            eastMost = Math.max(eastMost, fromFirst);
        }
        return new LocalPlane((south + northMost) / 2, log.lonDeg(0) + (west + eastMost) / 2);
    }

    private static double medianInterval(double[] time) {
        if (time.length < 2) {
            return 1;
        }
        double[] dt = new double[time.length - 1];
        for (int i = 0; i < dt.length; i++) {
            dt[i] = time[i + 1] - time[i];
        }
        Arrays.sort(dt);
        return dt[dt.length / 2];
    }

    private SmoothPath smooth(
            double[] time, double[] east, double[] north, boolean[] segment, boolean[] bridged, FixNoise noise) {
        int n = time.length;
        SmoothPath path = new SmoothPath(time, segment, bridged);
        List<int[]> stretches = stretches(segment);
        IntStream numbers = IntStream.range(0, stretches.size());
        (options.threads() > 1 ? numbers.parallel() : numbers).forEach(s -> {
            int from = stretches.get(s)[0];
            int to = stretches.get(s)[1];
            double[] sigma = new double[to - from];
            for (int i = from; i < to; i++) {
                sigma[i - from] = noise.sigmaM(log.fix(i));
            }
            path.put(
                    from,
                    PathSmoother.of(
                            Arrays.copyOfRange(time, from, to),
                            Arrays.copyOfRange(east, from, to),
                            Arrays.copyOfRange(north, from, to),
                            sigma));
        });
        if (n > 0 && stretches.isEmpty()) {
            throw new IllegalStateException("records without a stretch");
        }
        return path;
    }

    /** Returns [from, to) of every stretch; a stretch begins at each record i with {@code start[i]}. */
    static List<int[]> stretches(boolean[] start) {
        List<int[]> list = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= start.length; i++) {
            if (i == start.length || start[i]) {
                list.add(new int[] {from, i});
                from = i;
            }
        }
        return list;
    }

    /** Sets the pass number of every working step and returns the passes. */
    private List<Pass> numberPasses(PoseColumns c, boolean[] lowered) {
        int steps = c.record.length;
        c.pass = new int[steps];
        c.lowered = new boolean[steps];
        List<Pass> passes = new ArrayList<>();
        int first = -1;
        for (int k = 0; k <= steps; k++) {
            boolean down = k < steps && c.record[k] >= 0 && lowered[c.record[k]];
            boolean working = down && movesForward(c, k);
            if (working && first < 0) {
                first = k;
            } else if (!working && first >= 0) {
                passes.add(passOf(c, passes.size() + 1, first, k));
                first = -1;
            }
            if (down) {
                c.lowered[k] = true;
            }
            if (working) {
                c.pass[k] = passes.size() + 1;
            }
        }
        return passes;
    }

    private boolean movesForward(PoseColumns c, int k) {
        double de = c.dropEastM[k + 1] - c.dropEastM[k];
        double dn = c.dropNorthM[k + 1] - c.dropNorthM[k];
        double along = de * (c.barSin[k] + c.barSin[k + 1]) / 2 + dn * (c.barCos[k] + c.barCos[k + 1]) / 2;
        return !c.backing[k] && along > options.minWorkMps() * (c.timeS[k + 1] - c.timeS[k]);
    }

    private static Pass passOf(PoseColumns c, int number, int first, int end) {
        double length = 0;
        for (int k = first; k < end; k++) {
            length += Math.hypot(c.dropEastM[k + 1] - c.dropEastM[k], c.dropNorthM[k + 1] - c.dropNorthM[k]);
        }
        double heading = Math.atan2(c.dropEastM[end] - c.dropEastM[first], c.dropNorthM[end] - c.dropNorthM[first]);
        return new Pass(number, first, end, c.timeS[first], c.timeS[end], length, heading);
    }

    private TrackQuality quality(double[] time, boolean[] gap, double medianS, FixNoise noise) {
        int gaps = 0;
        double gapS = 0;
        int[] byFix = new int[10];
        for (int i = 0; i < time.length; i++) {
            if (gap[i] && i > 0) {
                gaps++;
                gapS += time[i] - time[i - 1];
            }
            byFix[FixNoise.slot(log.fix(i))]++;
        }
        double[] noiseM = new double[10];
        for (int slot = 0; slot < 10; slot++) {
            noiseM[slot] = byFix[slot] == 0 ? Double.NaN : noise.sigmaM(slot == 9 ? -1 : slot);
        }
        return new TrackQuality(medianS, gaps, gapS, !log.hasDown(), noiseM, byFix);
    }
}
