package io.rowledger.analysis;

import io.rowledger.coverage.AppliedArea;
import io.rowledger.coverage.AreaCoverages;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.field.MapGeometry;
import io.rowledger.field.Prescription;
import io.rowledger.geo.Jts;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.AreaLog;
import io.rowledger.log.LogTable;
import io.rowledger.maps.MapFeature;
import io.rowledger.rate.AreaRates;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.Rates;
import io.rowledger.rig.Band;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigFile;
import io.rowledger.setback.AreaSetbacks;
import io.rowledger.setback.Setbacks;
import io.rowledger.strip.Strips;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.uncertainty.AreaIntervals;
import io.rowledger.units.QuantityKind;
import io.rowledger.whatif.WhatIf;
import io.rowledger.zones.Zones;
import io.rowledger.zones.ZonesBuilder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * A job whose log is a map of covered areas with a rate each. Areas, volumes, nitrogen, skips, overlaps and setbacks are
 * computed; the track is empty, and whatever needs a path, flows or rows is unknown.
 */
final class AreaJob {
    private final Rig rig;
    private final AreaLog log;
    private final LocalPlane plane;
    private final List<Geometry> ground = new ArrayList<>();
    private boolean repaired;

    private AreaJob(Rig rig, AreaLog log) {
        this.rig = rig;
        this.log = log;
        this.plane = TrackBuilder.planeOf(log.reading().table());
        for (AreaLog.Area area : log.areas()) {
            MapGeometry.Placed placed =
                    MapGeometry.of(new MapFeature(0, 0, List.of(), area.shapes(), List.of()), plane);
            repaired |= placed.repaired();
            ground.add(Jts.areal(placed.geometry()));
        }
    }

    static Analysis analyze(JobFiles files, RigFile rigFile, int threads, Progress progress) {
        Rig rig = rigFile.rig();
        AreaLog log = AreaLog.read(files.logs(), rig.logOptions());
        JobClock.requireAtPlace(rig, log.reading().table());
        progress.begins("computing coverage", log.areas().size() + " areas");
        return new AreaJob(rig, log).analyze(files, rigFile, threads);
    }

    private Analysis analyze(JobFiles files, RigFile rigFile, int threads) {
        Envelope extent = new Envelope();
        ground.forEach(area -> extent.expandToInclude(area.getEnvelopeInternal()));
        FieldMaps maps = FieldMaps.read(files, rig, plane, extent);
        List<AppliedArea> areas = areas(maps.prescription().orElse(null));
        LogTable table = log.reading().table();
        Track track = Track.without(plane);
        Strips strips = new Strips(track.poses(), rig.bands());
        Delivery delivery = DeliveryBuilder.build(table, rig, strips);
        Rates rates = rates(areas);
        double[] widthsM = widthsM();
        Arrays.sort(widthsM);
        Coverage coverage = AreaCoverages.of(
                areas,
                rig.products().size(),
                rig.rows(),
                widthsM[widthsM.length / 2],
                maps.boundary().orElse(null),
                CoverageOptions.defaults(threads));
        maps.requireInsideBoundary(coverage);
        boolean[] hasTarget = hasTarget();
        Zones zones = maps.prescription()
                .map(map -> ZonesBuilder.ofAreas(map, coverage, hasTarget))
                .orElse(null);
        maps.requireInsideZones(zones == null ? 0 : zones.outsideCoveredM2(), coverage);
        Setbacks setbacks = maps.keepOuts()
                .map(places -> AreaSetbacks.of(places, areas, rig.products()))
                .orElse(null);
        return new Analysis(
                rig,
                table,
                track,
                strips,
                delivery,
                rates,
                coverage,
                Diagnosis.notEvaluated(Message.of("findings.note.areas")),
                AreaIntervals.of(rig, rates, coverage),
                SetupReview.none(),
                notes(maps, rates, coverage, zones),
                setbacks,
                zones,
                SetupFiles.of(files, rigFile, log.reading()),
                areas,
                WhatIf.NOTHING);
    }

    /** Returns the areas; where a prescription sets their target, they are divided along its zones. */
    private List<AppliedArea> areas(@Nullable Prescription prescription) {
        List<AppliedArea> areas = new ArrayList<>();
        for (int i = 0; i < ground.size(); i++) {
            AreaLog.Area area = log.areas().get(i);
            Geometry rest = ground.get(i);
            if (prescription != null && Arrays.stream(area.targetLPerM2()).anyMatch(Double::isNaN)) {
                for (Prescription.Zone zone : prescription.zones()) {
                    if (zone.area().getEnvelopeInternal().intersects(rest.getEnvelopeInternal())) {
                        add(Jts.intersection(rest, zone.area()), area, zone.rateLPerM2(), areas);
                        rest = Jts.difference(rest, zone.area());
                    }
                }
            }
            add(rest, area, new double[0], areas);
        }
        return areas;
    }

    /** Adds a part of an area; its target is the file's, else the zone's, else the rig file's. */
    private void add(Geometry part, AreaLog.Area area, double[] zoneLPerM2, List<AppliedArea> areas) {
        if (part.isEmpty()) {
            return;
        }
        double[] targets = area.targetLPerM2().clone();
        for (int p = 0; p < targets.length; p++) {
            double zone = zoneLPerM2.length == 0 ? Double.NaN : zoneLPerM2[p];
            double otherwise = Double.isNaN(zone) ? rig.products().get(p).targetLPerM2() : zone;
            targets[p] = Double.isNaN(targets[p]) ? otherwise : targets[p];
        }
        areas.add(new AppliedArea(part, area.rateLPerM2(), targets));
    }

    /** Returns for each product whether an area has a target of its own. */
    private boolean[] hasTarget() {
        boolean[] hasTarget = new boolean[rig.products().size()];
        for (AreaLog.Area area : log.areas()) {
            for (int p = 0; p < hasTarget.length; p++) {
                hasTarget[p] |= !Double.isNaN(area.targetLPerM2()[p]);
            }
        }
        return hasTarget;
    }

    private double[] widthsM() {
        return rig.bands().stream().mapToDouble(Band::widthM).toArray();
    }

    private Rates rates(List<AppliedArea> areas) {
        AreaRates rates = new AreaRates(widthsM(), rig.products().size());
        for (AppliedArea area : areas) {
            rates.add(area.ground().getArea(), area.applied(), area.rateLPerM2(), area.targetLPerM2());
        }
        return rates.build();
    }

    private List<Message> notes(FieldMaps maps, Rates rates, Coverage coverage, @Nullable Zones zones) {
        List<Message> notes = new ArrayList<>();
        notes.add(Message.of("notes.areas"));
        notes.addAll(maps.notes());
        notes.addAll(log.reading().notes());
        notes.addAll(rig.job().notes());
        if (repaired) {
            notes.add(Message.of("notes.areas.repaired"));
        }
        for (int p = 0; p < rig.products().size(); p++) {
            Product product = rig.products().get(p);
            double unknownM2 = rates.unknownAreaM2(p);
            if (unknownM2 > 0) {
                notes.add(Message.of("notes.areas.unknown", product.name(), Message.area(unknownM2)));
            }
        }
        if (maps.boundary().isEmpty()) {
            notes.add(Message.of("notes.boundary.missing"));
        } else if (maps.boundary().get().repaired()) {
            notes.add(Message.of("notes.outline.repaired", maps.boundary().get().file()));
        }
        if (coverage.grid().cellM() > CoverageOptions.CELL_M) {
            notes.add(Message.of(
                    "notes.grid.coarse",
                    Message.value(QuantityKind.LENGTH, coverage.grid().cellM()),
                    Message.value(QuantityKind.LENGTH, CoverageOptions.CELL_M),
                    CoverageOptions.MAX_CELLS));
        }
        if (zones != null) {
            notes.addAll(ZoneNotes.of(zones, hasTarget(), rig, coverage));
        }
        return notes;
    }
}
