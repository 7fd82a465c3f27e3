package io.rowledger.diagnose.setup;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import io.rowledger.track.Track;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Where the drop line is along the way: passes of both directions start and stop along one line. */
final class DropOffset {
    static final String KEY = "rig.hitch_to_drop";

    /** Headland crossings needed. */
    private static final int MIN = 5;

    /**
     * Half the difference between how early a person lowers and how late lifts, with what a bend at the end adds, 1 sigma, m;
     * common practice, no source.
     */
    private static final double HABIT_SIGMA_M = 0.05;

    /** Below this a drop line's place is a matter of where the tape is held, m. */
    private static final double MIN_M = 0.15;

    /** Ends are left out beyond this, m. */
    private static final double TRIM_M = 0.8;

    /** Ends known to their records no closer than this to either side: about as far as they stray by chance anyway, m. */
    private static final double COARSE_M = 0.2;

    /** A delay of the work state is beyond doubt from so many sigmas on. */
    private static final double SURE_DELAY = 4;

    private DropOffset() {}

    /**
     * The drop line's place.
     *
     * @param antenna the antenna's place: what the log would change there goes off here, since the ends tell only the sum
     */
    static SetupMeasurement of(LogTable log, Rig rig, Track track, SetupMeasurement antenna) {
        double was = rig.hitchToDropM();
        if (track.quality().workStateDerived()) {
            return untold(
                    was,
                    "The log has no work state, and ends taken from the flow shift with the meter's lag as they would with a"
                            + " wrong length. Log the work state (down).");
        }
        List<PassEnd> ends = PassEnds.of(log, track);
        double[] times = PassEnds.times(ends);
        List<Contrast> contrasts = OutlierRejection.of(PassEnds.contrasts(ends, rig.widthM()), TRIM_M);
        DriftFit.Fitted error = error(ends, contrasts, rig.widthM());
        if (error == null) {
            return untold(
                    was,
                    (contrasts.isEmpty() ? "No" : "Only " + contrasts.size())
                            + " headland crossings lie between two neighbors of which one was driven the"
                            + " other way; " + MIN + " are needed. Drive passes side by side in opposite directions,"
                            + " and lower and lift the bar on one line at each end.");
        }
        DriftFit.Fitted delay = DriftFit.delay(contrasts, times, MIN);
        if (delay != null && Math.abs(delay.value()) > SURE_DELAY * delay.sigma() && delay.sigma() < 0.2) {
            return untold(
                    was,
                    "The mismatch at the headlands grows with speed, as a work state logged "
                            + FlowLag.seconds(Math.abs(delay.value()))
                            + " off would make it, and not a length. Drive the ends at one speed.");
        }
        double aheadM = antenna.differs() ? antenna.change() : 0;
        Estimate estimate = new Estimate(was - error.value() - aheadM, Math.hypot(error.sigma(), HABIT_SIGMA_M), MIN_M);
        long starts = contrasts.stream().filter(c -> ends.get(c.of()).start()).count();
        String basis =
                contrasts.size() + " headland crossings (" + starts + " starts and " + (contrasts.size() - starts)
                        + " stops), each held against the neighboring passes, of which one or both were driven the other way."
                        + " What is seen is the whole way from antenna to drop line.";
        String alternative =
                "a wrong antenna or hitch length of the same size; a habit of lowering farther past the line than lifting; or a"
                        + " work state that is logged late.";
        return SetupMeasurement.of(SetupParameter.DROP_OFFSET, -1, KEY, was, estimate, basis, alternative);
    }

    private static DriftFit.@Nullable Fitted error(List<PassEnd> ends, List<Contrast> contrasts, double barM) {
        double halfM = ends.stream().mapToDouble(PassEnd::halfM).average().orElse(0);
        // An end is known to a record: as even chances over the way driven in one.
        DriftFit.Fitted byMiddles =
                DriftFit.error(contrasts, PassEnds.times(ends), new double[ends.size()], MIN, halfM / Math.sqrt(3));
        if (byMiddles == null || halfM < COARSE_M) {
            return byMiddles;
        }
        return HeadlandFit.error(ends, OutlierRejection.of(PassEnds.lines(ends, barM), byMiddles.value(), TRIM_M));
    }

    private static SetupMeasurement untold(double was, String why) {
        return SetupMeasurement.undetermined(SetupParameter.DROP_OFFSET, -1, KEY, was, why);
    }
}
