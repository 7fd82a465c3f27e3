package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import java.util.Locale;

/**
 * Positions a spreadsheet or a controller rounded: with four decimals of a degree a step is 11 m, wider than most bars, and
 * what a row covered can't be told any more; with five it is 1.1 m, and passes seem to overlap that do not.
 *
 * <p>A degree of latitude is 111.1 km in the middle (WGS 84: 110.57 km at the equator, 111.69 km at the poles).
 */
final class CoarsePositions {
    /** Fewer records may well have round figures by chance. */
    private static final int MIN_RECORDS = 20;
    /** Changes of position from which on it is a path. */
    private static final int MIN_CHANGES = 5;
    /** A figure this near a whole number of steps is one: doubles of degrees are good to 1e-14. */
    private static final double WHOLE = 1e-6;

    private static final double METRES_PER_DEGREE = 111_100;
    private static final int UNUSABLE_DECIMALS = 4;
    private static final int COARSE_DECIMALS = 5;

    private CoarsePositions() {}

    static void check(FileLog file) {
        RawLog log = file.log();
        if (log.records < MIN_RECORDS || !moves(log)) {
            return;
        }
        if (isRounded(log, UNUSABLE_DECIMALS)) {
            throw UnusableInputException.found(String.format(
                            Locale.ROOT,
                            "positions with no more than %d decimals of a degree, which is a step of %.0f m",
                            UNUSABLE_DECIMALS,
                            METRES_PER_DEGREE * 1e-4))
                    .inFile(file.name())
                    .atLine(log.line[0])
                    .expected("positions with seven decimals or more, as the receiver gives them")
                    .hint(
                            "export the log again with all decimals; a spreadsheet may have rounded them when it saved the file");
        }
        if (isRounded(log, COARSE_DECIMALS)) {
            file.notes()
                    .add(String.format(
                            Locale.ROOT,
                            "The positions in %s have no more than %d decimals of a degree, which is a step of %.1f m: skips and "
                                    + "doubles narrower than that are not real. A spreadsheet may have rounded them; export the "
                                    + "log again with all decimals.",
                            file.name(),
                            COARSE_DECIMALS,
                            METRES_PER_DEGREE * 1e-5));
        }
    }

    /** A tractor that stands has one round position perhaps, and nothing to be told from it anyway. */
    private static boolean moves(RawLog log) {
        int changes = 0;
        for (int i = 1; i < log.records && changes < MIN_CHANGES; i++) {
            changes += log.latDeg[i] != log.latDeg[i - 1] || log.lonDeg[i] != log.lonDeg[i - 1] ? 1 : 0;
        }
        return changes >= MIN_CHANGES;
    }

    private static boolean isRounded(RawLog log, int decimals) {
        double steps = Math.pow(10, decimals);
        for (int i = 0; i < log.records; i++) {
            if (!isWhole(log.latDeg[i] * steps) || !isWhole(log.lonDeg[i] * steps)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isWhole(double figure) {
        return Math.abs(figure - Math.rint(figure)) < WHOLE;
    }
}
