package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.field.KeepOut;
import io.rowledger.log.LogReading;
import io.rowledger.log.LogTable;
import io.rowledger.log.source.LogSource;
import io.rowledger.rate.VolumeBalance;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.setback.Setback;
import io.rowledger.setback.Setbacks;
import io.rowledger.text.Message;
import io.rowledger.track.PathBreak;
import io.rowledger.track.TrackQuality;
import io.rowledger.units.QuantityKind;
import io.rowledger.zones.Zones;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** What a reader must know before trusting the figures. */
final class JobNotes {
    /** Share of records left out from which on the figures are of a part of the job (1); common practice, no source. */
    private static final double MAX_DROPPED = 0.01;

    /** Share of the metered volume in gaps of the log from which on it is told (1); common practice, no source. */
    private static final double MAX_GAP_VOLUME = 0.005;

    /** Scatter of fixes from which on thin skips and overlaps may be the receiver's and not the driver's, m. */
    private static final double COARSE_FIX_M = 0.04;

    /** Fix type "RTK fixed" (NMEA 0183 quality digit). */
    private static final int RTK_FIXED = 4;
    /** Index of records that don't name their fix type. */
    private static final int NOT_LOGGED = 9;

    private final List<Message> notes = new ArrayList<>();

    private JobNotes() {}

    static List<Message> of(
            LogReading reading, FieldWork work, Coverage coverage, @Nullable Setbacks setbacks, @Nullable Zones zones) {
        JobNotes all = new JobNotes();
        all.notes.addAll(work.maps().notes());
        all.notes.addAll(reading.notes());
        all.notes.addAll(work.rig().job().notes());
        if (zones == null) {
            all.addTargets(reading.table(), work.rig());
        } else {
            all.notes.addAll(ZoneNotes.of(zones, reading.table().hasTargets(), work.rig(), coverage));
        }
        all.addRecords(reading.table(), work.track().quality());
        all.addBreaks(work.track().breaks(), reading.table().isTimed());
        all.addGapVolume(reading.table(), work);
        all.addCoarseFixes(work.track().quality());
        all.addGround(work.maps(), coverage);
        if (setbacks != null) {
            all.addSetbacks(setbacks);
        }
        return all.notes;
    }

    private void add(String key, Object... values) {
        notes.add(Message.of(key, values));
    }

    /** Liquid in gaps of the log, which no row, pass or area has. */
    private void addGapVolume(LogTable log, FieldWork work) {
        for (int p = 0; p < work.rig().products().size(); p++) {
            VolumeBalance balance = VolumeBalance.of(log, work.track(), work.delivery(), p);
            double share = balance.gapL() / balance.totalL();
            if (share > MAX_GAP_VOLUME) {
                add(
                        "notes.volume.gaps",
                        work.rig().products().get(p).name(),
                        Message.value(QuantityKind.VOLUME, balance.gapL()),
                        Message.percent(100 * share));
            }
        }
    }

    /** A target that only a part of the records has can't be summed. */
    private void addTargets(LogTable log, Rig rig) {
        for (int p = 0; p < rig.products().size(); p++) {
            Product product = rig.products().get(p);
            if (!log.hasTarget(p) || !Double.isNaN(product.targetLPerM2())) {
                continue;
            }
            int without = 0;
            for (int i = 0; i < log.records(); i++) {
                without += Double.isNaN(log.targetLPerM2(p, i)) ? 1 : 0;
            }
            if (without > 0) {
                add("notes.target.partly", product.name(), without, log.records());
            }
        }
    }

    private void addRecords(LogTable log, TrackQuality quality) {
        if (quality.workStateDerived()) {
            add("notes.work_state");
        }
        for (LogSource source : log.sources()) {
            // The reader of the log has its own note on frozen positions.
            int dropped = source.dropped().total() - source.dropped().frozen() - source.repeated();
            if (dropped > MAX_DROPPED * source.records()) {
                add("notes.dropped", source.file(), dropped, source.records());
            }
        }
        if (quality.gaps() > 0 && !log.isTimed()) {
            add("notes.gaps.untimed", quality.gaps());
        } else if (quality.gaps() > 0) {
            add("notes.gaps", quality.gaps(), Message.duration(quality.gapS()));
        }
    }

    /** Shifts of the position, and how much work may lie where there was no position. */
    private void addBreaks(List<PathBreak> breaks, boolean timed) {
        int shifts = 0;
        double largestM = 0;
        int lowered = 0;
        double loweredS = 0;
        int bridged = 0;
        double bridgedS = 0;
        for (PathBreak each : breaks) {
            if (each.kind() == PathBreak.Kind.SHIFTED) {
                shifts++;
                largestM = Math.max(largestM, each.lengthM());
            } else if (each.kind() == PathBreak.Kind.BRIDGED) {
                bridged++;
                bridgedS += each.durationS();
            } else if (each.lowered() && timed) {
                lowered++;
                loweredS += each.durationS();
            }
        }
        if (bridged > 0 && timed) {
            add("notes.breaks.bridged", bridged, Message.duration(bridgedS));
        }
        if (lowered > 0) {
            add("notes.breaks.lowered", lowered, Message.duration(loweredS));
        }
        if (shifts > 0) {
            add("notes.breaks.shifted", shifts, Message.value(QuantityKind.LENGTH, largestM));
        }
    }

    /** A note for each fix type that is coarse by itself, or that drifts from pass to pass however smooth it looks. */
    private void addCoarseFixes(TrackQuality quality) {
        int[] records = quality.recordsByFix();
        double all = IntStream.of(records).sum();
        for (int digit = 0; digit < records.length; digit++) {
            double noiseM = quality.noiseM()[digit];
            boolean coarse = noiseM > COARSE_FIX_M || (digit < NOT_LOGGED && digit != RTK_FIXED);
            if (records[digit] > 0 && coarse) {
                add(
                        "notes.coarse_fixes",
                        Message.percent(100 * records[digit] / all),
                        Message.of("words.fix." + digit),
                        Message.value(QuantityKind.SMALL_LENGTH, noiseM));
            }
        }
    }

    private void addGround(FieldMaps maps, Coverage coverage) {
        if (maps.boundary().isEmpty()) {
            add("notes.boundary.missing");
        } else if (maps.boundary().get().repaired()) {
            add("notes.outline.repaired", maps.boundary().get().file());
        }
        if (coverage.grid().cellM() > CoverageOptions.CELL_M) {
            add(
                    "notes.grid.coarse",
                    Message.value(QuantityKind.LENGTH, coverage.grid().cellM()),
                    Message.value(QuantityKind.LENGTH, CoverageOptions.CELL_M),
                    CoverageOptions.MAX_CELLS);
        }
    }

    private void addSetbacks(Setbacks setbacks) {
        for (Setback setback : setbacks.places()) {
            KeepOut place = setback.keepOut();
            if (place.repaired()) {
                add("notes.outline.place.repaired", setbacks.file(), place.name());
            }
            if (place.ground().isEmpty()) {
                add("notes.setback.no_ground", setbacks.file(), place.name());
            }
        }
    }
}
