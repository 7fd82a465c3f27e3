package io.rowledger.field;

import io.rowledger.field.Prescription.Zone;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.Jts;
import io.rowledger.geo.LocalPlane;
import io.rowledger.geo.Unions;
import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapProperty;
import io.rowledger.maps.MapReader;
import io.rowledger.maps.MapShape;
import io.rowledger.maps.MapUse;
import io.rowledger.rate.PrescribedRates;
import io.rowledger.rig.PrescriptionColumns;
import io.rowledger.rig.Product;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * A prescription from a map file ({@link MapReader}): polygons with a rate each ({@link ZoneRates}). Features of one name are one
 * zone, and so are nameless features of the same rates.
 *
 * <p>Ground in two zones of different rates has no target, so it is refused, except slivers: where two zones were drawn
 * along each other by hand, the feature that stands first in the file keeps the ground.
 */
public final class PrescriptionReader {
    /** Overlaps of a mean width up to this are slivers of drawing: narrower than any row, m. */
    static final double SLIVER_M = 0.5;

    private final MapFeatures source;
    private final PrescriptionColumns columns;
    private final ZoneRates rates;
    private final List<Piece> pieces = new ArrayList<>();
    private boolean repaired;
    private double sliverM2;

    /** One feature. */
    private record Piece(MapFeature feature, String name, Geometry area, double[] rates) {
        boolean sameRates(Piece other) {
            return Arrays.equals(rates, other.rates);
        }

        String called() {
            return name.isEmpty() ? "feature " + feature.number() : "feature " + feature.number() + " (" + name + ")";
        }
    }

    private PrescriptionReader(MapFeatures source, List<Product> products, PrescriptionColumns columns) {
        this.source = source;
        this.columns = columns;
        this.rates = new ZoneRates(source, products, columns);
    }

    /**
     * The prescription in the job's plane.
     *
     * @param driven the box around the driven ground in the plane
     * @param products the rig's
     * @param columns the attributes that the rig file names
     * @throws UnusableInputException where the file can't be read, a feature has no polygon or no readable rate, zones
     *     overlap with different rates, or all of it lies far from the driven ground
     */
    public static Prescription read(
            Path file, LocalPlane plane, Envelope driven, List<Product> products, PrescriptionColumns columns) {
        MapFeatures source = MapReader.read(file, MapUse.PRESCRIPTION);
        PrescriptionReader reader = new PrescriptionReader(source, products, columns);
        if (source.features().isEmpty()) {
            throw UnusableInputException.found("a prescription without any feature")
                    .inFile(source.file())
                    .expected("polygons with a target rate each")
                    .hint("export the zones again as " + source.format().words());
        }
        for (MapFeature feature : source.features()) {
            reader.add(feature, plane);
        }
        reader.requireNear(driven, plane);
        reader.partOverlaps();
        List<Zone> zones = reader.zones();
        if (zones.size() > PrescribedRates.MAX_ZONES) {
            throw UnusableInputException.found(zones.size() + " zones")
                    .inFile(source.file())
                    .expected("no more than " + PrescribedRates.MAX_ZONES)
                    .hint("join zones of nearly the same rate");
        }
        return new Prescription(source.file(), zones, reader.repaired, reader.sliverM2, source.notes());
    }

    private void add(MapFeature feature, LocalPlane plane) {
        boolean polygons = !feature.shapes().isEmpty()
                && feature.shapes().stream().allMatch(s -> s.kind() == MapShape.Kind.POLYGON);
        if (!polygons) {
            String found = feature.types().isEmpty() ? "no geometry" : String.join(", ", feature.types());
            throw source.fault(feature, found)
                    .expected("a Polygon or MultiPolygon around the zone")
                    .hint("draw the zone as a polygon, or take the feature out");
        }
        SelfIntersections.requireFew(source, feature);
        MapGeometry.Placed placed = MapGeometry.of(feature, plane);
        Geometry area = Jts.areal(placed.geometry());
        if (area.getArea() == 0) {
            throw source.fault(feature, "a polygon without any area")
                    .expected("a polygon around the zone")
                    .hint("draw the zone again, or take the feature out");
        }
        repaired |= placed.repaired();
        pieces.add(new Piece(feature, name(feature), area, rates.of(feature)));
    }

    private String name(MapFeature feature) {
        List<String> names = columns.name().isEmpty() ? List.of("name", "zone") : List.of(columns.name());
        for (String key : names) {
            for (MapProperty property : feature.called(key)) {
                if (!property.text().isBlank()) {
                    return property.text().strip();
                }
            }
        }
        return "";
    }

    private void requireNear(Envelope driven, LocalPlane plane) {
        double awayM = Double.POSITIVE_INFINITY;
        for (Piece piece : pieces) {
            awayM = Math.min(awayM, piece.area.getEnvelopeInternal().distance(driven));
        }
        if (awayM <= BoundaryReader.MAX_AWAY_M) {
            return;
        }
        double[] latLon = new double[2];
        plane.inverse(pieces.get(0).area.getCoordinate().x, pieces.get(0).area.getCoordinate().y, latLon);
        throw UnusableInputException.found(String.format(
                        Locale.ROOT,
                        "a prescription %.0f km away from the log, its first corner at latitude, longitude %.5f, %.5f",
                        awayM / 1000,
                        latLon[0],
                        latLon[1]))
                .inFile(source.file())
                .expected("the zones of the field that was driven"
                        + source.format().order())
                .hint("give the prescription of this field, or "
                        + source.format().placedWrongly());
    }

    /** Gives ground in two features to the one that stands first; refuses where their rates are not the same. */
    private void partOverlaps() {
        for (int j = 1; j < pieces.size(); j++) {
            Piece later = pieces.get(j);
            Geometry left = later.area;
            for (int i = 0; i < j; i++) {
                Piece first = pieces.get(i);
                if (!first.area.getEnvelopeInternal().intersects(left.getEnvelopeInternal())) {
                    continue;
                }
                Geometry common = Jts.intersection(first.area, left);
                if (common.isEmpty()) {
                    continue;
                }
                if (!first.sameRates(later)) {
                    requireSliver(first, later, common);
                    sliverM2 += common.getArea();
                }
                left = Jts.difference(left, first.area);
            }
            pieces.set(j, new Piece(later.feature, later.name, left, later.rates));
        }
    }

    private void requireSliver(Piece first, Piece later, Geometry common) {
        for (Polygon polygon : Jts.polygons(common)) {
            if (Jts.meanWidthM(polygon) > SLIVER_M) {
                throw UnusableInputException.found(String.format(
                                Locale.ROOT,
                                "%.0f m2 that lie both in %s and in %s, which have different rates",
                                common.getArea(),
                                first.called(),
                                later.called()))
                        .inFile(source.file())
                        .atLine(later.feature.line())
                        .expected("one rate for each place; overlaps up to " + SLIVER_M
                                + " m wide are taken as drawn along each other")
                        .hint("cut one of the two zones back to the other's edge");
            }
        }
    }

    private List<Zone> zones() {
        Map<String, List<Piece>> byName = new LinkedHashMap<>();
        for (Piece piece : pieces) {
            String key = piece.name.isEmpty() ? "rates " + Arrays.toString(piece.rates) : "name " + piece.name;
            byName.computeIfAbsent(key, k -> new ArrayList<>()).add(piece);
        }
        List<Zone> zones = new ArrayList<>();
        for (List<Piece> together : byName.values()) {
            Piece first = together.get(0);
            for (Piece piece : together) {
                if (!piece.sameRates(first)) {
                    throw source.fault(
                                    piece.feature,
                                    "the zone \"" + piece.name + "\" with another rate than in feature "
                                            + first.feature.number())
                            .expected("one rate for a zone's name")
                            .hint("give the two zones different names");
                }
            }
            List<Geometry> areas =
                    together.stream().map(Piece::area).filter(g -> !g.isEmpty()).toList();
            if (!areas.isEmpty()) {
                Geometry area = areas.size() == 1 ? areas.get(0) : Unions.union(areas, 1);
                zones.add(new Zone(zones.size() + 1, first.name, area, first.rates));
            }
        }
        return zones;
    }
}
