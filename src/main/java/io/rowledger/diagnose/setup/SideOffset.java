package io.rowledger.diagnose.setup;

import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import java.util.List;

/** Side offset of the bar: if it is wrong, the gaps between neighboring passes are wide and narrow in turn. */
final class SideOffset {
    static final String KEY = "rig.bar_right_of_center";

    /** Smallest number of passes between two neighbors. */
    private static final int MIN_PASSES = 4;

    /**
     * Error of the bar's center in the guidance, 1 sigma, m: its own offset is entered to the inch or the centimeter; common
     * practice, no source.
     */
    private static final double GUIDANCE_SIGMA_M = 0.01;

    /** Smallest difference that counts, m: less depends on where the tape is held. */
    private static final double MIN_M = 0.04;

    /** Passes farther than this from the fit are rejected, m. */
    private static final double REJECT_M = 0.1;

    private SideOffset() {}

    static SetupMeasurement of(Rig rig, Track track) {
        double givenM = rig.barRightM();
        List<Contrast> contrasts = OutlierRejection.of(PassGaps.contrasts(track, rig.widthM()), REJECT_M);
        DriftFit.Fitted error = DriftFit.error(contrasts, PassGaps.times(track), PassGaps.spans(track), MIN_PASSES, 0);
        if (error == null) {
            return SetupMeasurement.undetermined(
                    SetupParameter.SIDE_OFFSET,
                    -1,
                    KEY,
                    givenM,
                    Message.of("findings.setup.side.few", contrasts.size(), MIN_PASSES));
        }
        Estimate estimate = new Estimate(givenM - error.value(), Math.hypot(error.sigma(), GUIDANCE_SIGMA_M), MIN_M);
        return SetupMeasurement.of(
                SetupParameter.SIDE_OFFSET,
                -1,
                KEY,
                givenM,
                estimate,
                Message.of("findings.setup.side.basis", contrasts.size()),
                Message.of("findings.setup.side.alternative"));
    }
}
