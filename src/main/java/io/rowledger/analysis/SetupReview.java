package io.rowledger.analysis;

import io.rowledger.diagnose.setup.SetupCheck;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.rig.RigCorrection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The setup held against the log.
 *
 * @param check what the log says of each measure
 * @param correction the user's rig file with the figures that the log contradicts replaced; without lines where none is
 * @param corrected the ground by that file, or null where nobody asked or nothing differs
 */
public record SetupReview(
        SetupCheck check,
        RigCorrection.Corrected correction,
        @Nullable CorrectedRun corrected) {
    /** The corrected rig file's name, beside the results. */
    public static final String CORRECTED_FILE = "rig-corrected.yaml";

    /** Nothing was checked. */
    public static SetupReview none() {
        return new SetupReview(SetupCheck.none(), new RigCorrection.Corrected("", List.of()), null);
    }

    /** True where the log contradicts the rig file, so that strips lie elsewhere than this review puts them. */
    public boolean contradicted() {
        return !check.differing().isEmpty();
    }

    /** The line of the rig file that a measure would change, or null. */
    public RigCorrection.@Nullable Line line(SetupMeasurement measure) {
        return correction.lines().stream()
                .filter(line -> line.path().equals(measure.key()))
                .findFirst()
                .orElse(null);
    }
}
