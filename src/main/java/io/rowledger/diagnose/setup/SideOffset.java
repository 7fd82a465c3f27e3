package io.rowledger.diagnose.setup;

import io.rowledger.rig.Rig;
import io.rowledger.track.Track;
import java.util.List;

/** How far the bar hangs aside: gaps between neighbouring passes are wide and narrow in turn where it is set up wrong. */
final class SideOffset {
    static final String KEY = "rig.bar_right_of_center";

    /** Passes between two neighbours needed. */
    private static final int MIN = 4;

    /**
     * How well the bar's middle is where guidance takes it to be, 1 sigma, m: its own offset is entered to the inch or the
     * centimetre; common practice, no source.
     */
    private static final double GUIDANCE_SIGMA_M = 0.01;

    /** Below this a bar's middle is a matter of where the tape is held, m. */
    private static final double MIN_M = 0.04;

    /** Passes are left out beyond this, m. */
    private static final double TRIM_M = 0.1;

    private SideOffset() {}

    static SetupMeasurement of(Rig rig, Track track) {
        double was = rig.barRightM();
        List<Contrast> contrasts = OutlierRejection.of(PassGaps.contrasts(track, rig.widthM()), TRIM_M);
        DriftFit.Fitted error = DriftFit.error(contrasts, PassGaps.times(track), PassGaps.spans(track), MIN, 0);
        if (error == null) {
            return SetupMeasurement.undetermined(
                    SetupParameter.SIDE_OFFSET,
                    -1,
                    KEY,
                    was,
                    (contrasts.isEmpty() ? "No" : "Only " + contrasts.size())
                            + " passes lie between two neighbors of which one was driven the other way; " + MIN
                            + " are needed. Drive a few passes side by side, in opposite directions.");
        }
        Estimate estimate = new Estimate(was - error.value(), Math.hypot(error.sigma(), GUIDANCE_SIGMA_M), MIN_M);
        String basis =
                contrasts.size() + " passes between two neighbors, of which one or both were driven the other way:"
                        + " the gaps between them are wide and narrow in turn by four times the error.";
        String alternative = "an antenna that sits as far to the other side of the tractor's middle: which of the two"
                + " it is only a tape tells. If both are right, the bar really runs aside and the ground has these gaps.";
        return SetupMeasurement.of(SetupParameter.SIDE_OFFSET, -1, KEY, was, estimate, basis, alternative);
    }
}
