package io.rowledger.log.source;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapProperty;
import io.rowledger.maps.MapReader;
import io.rowledger.maps.MapShape;
import io.rowledger.maps.MapUse;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The points of a map file as rows of a table: latitude, longitude and the attributes. The position is the point's;
 * attributes that repeat it are left out.
 */
final class MapPoints {
    /** Decimals of a position in degrees: 0.01 mm. */
    private static final int DECIMALS = 10;

    private static final Set<String> POSITIONS = Set.of(
            "lat",
            "lon",
            "long",
            "lng",
            "latitude",
            "longitude",
            "x",
            "y",
            "gpslat",
            "gpslon",
            "xcoord",
            "ycoord",
            "pointx",
            "pointy",
            "fix_x",
            "fix_y");

    private MapPoints() {}

    /** The rows, header first. */
    static Iterator<List<String>> rows(Path file) {
        MapFeatures source = MapReader.read(file, MapUse.LOG);
        Set<String> names = new LinkedHashSet<>();
        for (MapFeature feature : source.features()) {
            requirePoint(source, feature);
            for (MapProperty property : feature.properties()) {
                if (!POSITIONS.contains(plain(property.name()))) {
                    names.add(property.name());
                }
            }
        }
        if (source.features().isEmpty()) {
            throw UnusableInputException.found("a map without features")
                    .inFile(source.file())
                    .expected("a point for each record, with its attributes")
                    .hint("export the log again");
        }
        List<String> header = new ArrayList<>(List.of("lat", "lon"));
        header.addAll(names);
        Iterator<MapFeature> features = source.features().iterator();
        return new Iterator<>() {
            private boolean begun;

            @Override
            public boolean hasNext() {
                return !begun || features.hasNext();
            }

            @Override
            public List<String> next() {
                if (!begun) {
                    begun = true;
                    return header;
                }
                return fields(features.next(), names);
            }
        };
    }

    private static void requirePoint(MapFeatures source, MapFeature feature) {
        boolean lines = feature.shapes().stream().anyMatch(shape -> shape.kind() == MapShape.Kind.LINE);
        boolean polygons = feature.shapes().stream().anyMatch(shape -> shape.kind() == MapShape.Kind.POLYGON);
        if (!lines && !polygons && feature.shapes().size() <= 1) {
            return;
        }
        String found = polygons
                ? "polygons, the shapes of what was covered, and no points"
                : lines ? "lines, and no points" : "several points in one feature";
        throw source.fault(feature, found)
                .expected("a point for each record of the log, with its attributes")
                .hint(
                        polygons
                                ? "export the points that the console logged; give a field's outline as --boundary, zones with"
                                        + " rates as --prescription"
                                : "export the points that the console logged");
    }

    private static List<String> fields(MapFeature feature, Set<String> names) {
        double[] lonLat = feature.shapes().isEmpty()
                ? null
                : feature.shapes().get(0).parts().get(0);
        List<String> fields = new ArrayList<>(names.size() + 2);
        fields.add(lonLat == null ? "" : degrees(lonLat[1]));
        fields.add(lonLat == null ? "" : degrees(lonLat[0]));
        for (String name : names) {
            fields.add(text(feature, name));
        }
        return fields;
    }

    private static String text(MapFeature feature, String name) {
        @Nullable String first = null;
        for (MapProperty property : feature.properties()) {
            if (first == null && property.name().equals(name)) {
                first = property.isNumber()
                        ? number(property.text())
                        : property.text().strip();
            }
        }
        return first == null ? "" : first;
    }

    /** A number without the zeros that a table pads it with: a state of 1.00000000 is 1. */
    private static String number(String text) {
        try {
            return new BigDecimal(text.strip()).stripTrailingZeros().toPlainString();
        } catch (NumberFormatException e) {
            return text.strip();
        }
    }

    private static String degrees(double value) {
        return BigDecimal.valueOf(value)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "");
    }
}
