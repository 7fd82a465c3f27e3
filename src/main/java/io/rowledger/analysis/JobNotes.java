package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.field.Boundary;
import io.rowledger.field.KeepOut;
import io.rowledger.log.LogReading;
import io.rowledger.log.LogTable;
import io.rowledger.log.source.LogSource;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.setback.Setback;
import io.rowledger.setback.Setbacks;
import io.rowledger.track.PathBreak;
import io.rowledger.track.Track;
import io.rowledger.track.TrackQuality;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitSystem;
import io.rowledger.zones.Zones;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** What a reader must know before trusting the figures, one sentence each. */
final class JobNotes {
    /** Beyond this share of records left out, the figures are of a part of the job. */
    private static final double MANY_DROPPED = 0.01;

    /** From this noise on, thin skips and doubles may be the receiver's and not the driver's, m. */
    private static final double COARSE_FIX_M = 0.04;

    private static final int RTK_FIXED = 4;
    /** The slot of records that don't name their fix. */
    private static final int NOT_LOGGED = 9;

    private JobNotes() {}

    static List<String> of(
            LogReading reading,
            Rig rig,
            Track track,
            @Nullable Boundary boundary,
            Coverage coverage,
            @Nullable Setbacks setbacks,
            @Nullable Zones zones) {
        List<String> notes = new ArrayList<>(reading.notes());
        notes.addAll(rig.job().notes());
        for (int p = 0; p < rig.products().size() && zones == null; p++) {
            targets(reading.table(), p, rig.products().get(p), notes);
        }
        if (zones != null) {
            ZoneNotes.add(zones, reading.table(), rig, coverage, notes);
        }
        TrackQuality quality = track.quality();
        if (quality.workStateDerived()) {
            notes.add("The log has no work state: the bar was taken as lowered wherever a row had flow.");
        }
        for (LogSource source : reading.table().sources()) {
            // Of frozen positions the reader of the log has said what became of them.
            int dropped = source.dropped().total() - source.dropped().frozen();
            if (dropped > MANY_DROPPED * source.records()) {
                notes.add(source.file() + ": " + dropped + " of " + source.records()
                        + " records could not be used; what they show is in no figure.");
            }
        }
        if (quality.gaps() > 0) {
            notes.add("The log is silent in " + quality.gaps() + (quality.gaps() == 1 ? " place" : " places") + ", "
                    + Math.round(quality.gapS()) + " s in all; nothing is assumed about them.");
        }
        addBreaks(notes, track.breaks());
        addCoarseFixes(notes, quality);
        if (boundary == null) {
            notes.add("No boundary was given: missed ground means gaps between strips only.");
        } else if (boundary.repaired()) {
            notes.add(boundary.file() + ": the outline was not valid (it crosses or touches itself) and was repaired.");
        }
        if (coverage.grid().cellM() > CoverageOptions.CELL_M) {
            notes.add(String.format(
                    Locale.ROOT,
                    "The received-rate grid has cells of %.4g m instead of %.4g m, because the field is so large that it"
                            + " would have more than %d cells.",
                    coverage.grid().cellM(),
                    CoverageOptions.CELL_M,
                    CoverageOptions.MAX_CELLS));
        }
        if (setbacks != null) {
            keepOuts(setbacks, notes);
        }
        return notes;
    }

    /** Shifts of the position, and how much work may lie where there was none. */
    private static void addBreaks(List<String> notes, List<PathBreak> breaks) {
        int shifts = 0;
        double largestM = 0;
        int lowered = 0;
        double loweredS = 0;
        int crossed = 0;
        double crossedS = 0;
        for (PathBreak each : breaks) {
            if (each.kind() == PathBreak.Kind.SHIFTED) {
                shifts++;
                largestM = Math.max(largestM, each.lengthM());
            } else if (each.kind() == PathBreak.Kind.BRIDGED) {
                crossed++;
                crossedS += each.durationS();
            } else if (each.lowered()) {
                lowered++;
                loweredS += each.durationS();
            }
        }
        if (crossed > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "In %d %s, %.0f s in all, there was no position while the bar was down, but the fixes on either side agree"
                            + " on the way between: the path was carried across, with the flows of either side.",
                    crossed,
                    crossed == 1 ? "place" : "places",
                    crossedS));
        }
        if (lowered > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "In %d of the silent places, %.0f s in all, the bar was down before or after: what was applied there is in"
                            + " no figure, and the ground may look skipped. The maps mark them.",
                    lowered,
                    loweredS));
        }
        if (shifts > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "The position shifts at once in %d %s, by up to %.1f m (%.1f ft), as when a receiver loses its corrections"
                            + " or finds them again. Skips and doubles beside them may not be real; the maps mark them.",
                    shifts,
                    shifts == 1 ? "place" : "places",
                    largestM,
                    QuantityKind.LENGTH.from(largestM, UnitSystem.US)));
        }
    }

    private static void keepOuts(Setbacks setbacks, List<String> notes) {
        for (Setback setback : setbacks.places()) {
            KeepOut place = setback.keepOut();
            if (place.repaired()) {
                notes.add(setbacks.file() + ": the outline of " + place.name()
                        + " was not valid (it crosses or touches itself) and was repaired.");
            }
            if (place.ground().isEmpty()) {
                notes.add(setbacks.file() + ": the setback of " + place.name()
                        + " is 0 and the place has no area of its own, so there is no ground inside it.");
            }
        }
    }

    /** A note for each kind of fix that is coarse by itself, or that drifts from pass to pass however smooth it looks. */
    private static void addCoarseFixes(List<String> notes, TrackQuality quality) {
        int[] records = quality.recordsByFix();
        double all = IntStream.of(records).sum();
        for (int digit = 0; digit < records.length; digit++) {
            double noiseM = quality.noiseM()[digit];
            boolean coarse = noiseM > COARSE_FIX_M || (digit < NOT_LOGGED && digit != RTK_FIXED);
            if (records[digit] == 0 || !coarse) {
                continue;
            }
            notes.add(String.format(
                    Locale.ROOT,
                    "%.1f%% of the fixes (%s) scatter by about %.0f cm (%.1f in; 1 sigma, record to record) and can drift"
                            + " further between passes: thin skips and doubles may be the receiver's, and turn errors"
                            + " look larger than they were.",
                    100 * records[digit] / all,
                    TrackQuality.fixName(digit),
                    noiseM * 100,
                    QuantityKind.SMALL_LENGTH.from(noiseM, UnitSystem.US)));
        }
    }

    /** A target that is there only in part can't be summed: the reader must know why nothing is judged against it. */
    private static void targets(LogTable log, int p, Product product, List<String> notes) {
        if (!log.hasTarget(p) || !Double.isNaN(product.targetLPerM2())) {
            return;
        }
        int without = 0;
        for (int i = 0; i < log.records(); i++) {
            without += Double.isNaN(log.targetLPerM2(p, i)) ? 1 : 0;
        }
        if (without > 0) {
            notes.add(product.name() + ": " + without + " of " + log.records()
                    + " records have no target rate and the rig file has none to fill in, so rows can't be held against a"
                    + " target. A line 'target:' under the product in the rig file mends it.");
        }
    }
}
