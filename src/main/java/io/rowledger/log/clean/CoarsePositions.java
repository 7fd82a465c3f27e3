package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.Locale;

/**
 * Detects rounded positions. Four decimals of a degree are steps of 11 m, wider than most bars: unusable. Five are steps of
 * 1.1 m: false skips and overlaps.
 *
 * <p>A degree of latitude is 111.1 km in the middle (WGS 84: 110.57 km at the equator, 111.69 km at the poles).
 */
final class CoarsePositions {
    /** Fewest records checked; fewer may be round by chance. */
    private static final int MIN_RECORDS = 20;
    /** Fewest changes of position of a moving machine. */
    private static final int MIN_CHANGES = 5;
    /** Tolerance for a whole number of steps; doubles of degrees are good to 1e-14. */
    private static final double WHOLE = 1e-6;

    private static final double METERS_PER_DEGREE = 111_100;
    private static final int MAX_UNUSABLE_DECIMALS = 4;
    private static final int MAX_COARSE_DECIMALS = 5;

    private CoarsePositions() {}

    static void check(FileLog file) {
        RawLog log = file.log();
        if (log.records < MIN_RECORDS || !moves(log)) {
            return;
        }
        if (isRounded(log, MAX_UNUSABLE_DECIMALS)) {
            throw UnusableInputException.found(String.format(
                            Locale.ROOT,
                            "positions with no more than %d decimals of a degree, which is a step of %.0f m",
                            MAX_UNUSABLE_DECIMALS,
                            METERS_PER_DEGREE * 1e-4))
                    .inFile(file.name())
                    .atLine(log.line[0])
                    .expected("positions with seven decimals or more, as the receiver gives them")
                    .hint(
                            "export the log again with all decimals; a spreadsheet may have rounded them when it saved the file");
        }
        if (isRounded(log, MAX_COARSE_DECIMALS)) {
            file.notes()
                    .add(Message.of(
                            "notes.log.coarsePositions",
                            file.shortName(),
                            MAX_COARSE_DECIMALS,
                            Message.value(QuantityKind.LENGTH, METERS_PER_DEGREE * 1e-5)));
        }
    }

    /** Returns true if the position changes at least MIN_CHANGES times. */
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
