package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.coverage.sections.Grouping;
import io.rowledger.coverage.sections.OffReasons;
import io.rowledger.finding.Finding;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rig.Rig;
import io.rowledger.setback.Setbacks;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import io.rowledger.zones.Zones;
import io.rowledger.zones.ZonesBuilder;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The work of a log as one rig file has it: where the bar went, the strips of its rows, and what each row put out.
 *
 * @param zoning the zones of the prescription under the strips; missing without a prescription
 */
record FieldWork(
        Rig rig,
        LogTable log,
        FieldMaps maps,
        Track track,
        Strips strips,
        Optional<ZonesBuilder> zoning,
        Delivery delivery) {

    /** Rebuilds the work of a log; reads the maps onto its plane. */
    static FieldWork of(LogTable log, Rig rig, JobFiles files, int threads) {
        Track track = TrackBuilder.build(log, rig, TrackOptions.defaults().withThreads(threads));
        FieldMaps maps = FieldMaps.read(files, rig, track);
        Strips strips = new Strips(track.poses(), rig.bands());
        Optional<ZonesBuilder> zoning = maps.prescription()
                .map(map -> new ZonesBuilder(map, strips, rig.products().size()));
        Delivery delivery = DeliveryBuilder.build(
                log, rig, strips, zoning.map(ZonesBuilder::prescribedRates).orElse(null));
        return new FieldWork(rig, log, maps, track, strips, zoning, delivery);
    }

    /**
     * Covered ground, skips and overlaps; for each of these groupings of rows also what section control would do.
     *
     * @param findings known faults: they tell rows without flow from rows that were shut off
     */
    Coverage coverage(List<Grouping> groupings, List<Finding> findings, int threads) {
        return Coverages.of(
                track,
                strips,
                delivery,
                maps.boundary().orElse(null),
                groupings,
                OffReasons.of(log, delivery, RowFaults.of(findings)),
                CoverageOptions.defaults(threads));
    }

    /** What was applied within setbacks; null without a keep-out file. */
    @Nullable
    Setbacks setbacks(Coverage coverage, int threads) {
        return maps.keepOuts()
                .map(places -> Setbacks.of(places, strips, delivery, coverage.strips(), rig.products(), threads))
                .orElse(null);
    }

    /** The prescription against the work; null without one. */
    @Nullable
    Zones zones(Coverage coverage) {
        return zoning.map(zones -> zones.zones(log, track.passes(), delivery, coverage))
                .orElse(null);
    }
}
