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
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The points or polygons of a map file as rows of a table: latitude, longitude and the attributes. The position is the
 * point's, or the middle of the polygon's bounding box; attributes that repeat it are left out. Row n below the header is
 * feature n.
 */
final class MapPoints {
    /** Decimals of a position in degrees: 0.01 mm. */
    private static final int DECIMALS = 10;

    private static final Pattern LINE_BREAKS = Pattern.compile("\\R");

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
        boolean polygons = LoggedPolygons.in(source);
        for (MapFeature feature : source.features()) {
            require(source, feature, polygons);
            for (MapProperty property : feature.properties()) {
                if (!POSITIONS.contains(plain(property.name()))) {
                    names.add(property.name());
                }
            }
        }
        if (source.features().isEmpty()) {
            throw UnusableInputException.found("a map without features")
                    .inFile(source.file())
                    .expected("a point for each record, or polygons with a rate each")
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

    private static void require(MapFeatures source, MapFeature feature, boolean polygons) {
        List<MapShape> shapes = feature.shapes();
        boolean fits = polygons
                ? shapes.stream().allMatch(shape -> shape.kind() == MapShape.Kind.POLYGON)
                : shapes.isEmpty() || (shapes.size() == 1 && shapes.get(0).kind() == MapShape.Kind.POINT);
        if (fits) {
            return;
        }
        boolean lines = shapes.stream().anyMatch(shape -> shape.kind() == MapShape.Kind.LINE);
        if (polygons || shapes.stream().anyMatch(shape -> shape.kind() == MapShape.Kind.POLYGON)) {
            throw source.fault(feature, lines ? "a line beside polygons" : "points beside polygons")
                    .expected("points for the records of the log, or polygons for the ground it covers")
                    .hint("export the two as files of their own");
        }
        throw source.fault(feature, lines ? "lines, and no points" : "several points in one feature")
                .expected("a point for each record of the log, with its attributes")
                .hint("export the points that the console logged");
    }

    private static List<String> fields(MapFeature feature, Set<String> names) {
        double[] lonLat = feature.shapes().isEmpty() ? null : position(feature.shapes());
        List<String> fields = new ArrayList<>(names.size() + 2);
        fields.add(lonLat == null ? "" : degrees(lonLat[1]));
        fields.add(lonLat == null ? "" : degrees(lonLat[0]));
        for (String name : names) {
            fields.add(text(feature, name));
        }
        return fields;
    }

    /** Longitude and latitude of a point, or of the middle of the box around polygons, degrees. */
    private static double[] position(List<MapShape> shapes) {
        if (shapes.get(0).kind() == MapShape.Kind.POINT) {
            return shapes.get(0).parts().get(0);
        }
        double[] first = shapes.get(0).parts().get(0);
        double[] box = {first[0], first[1], first[0], first[1]};
        for (MapShape shape : shapes) {
            double[] outline = shape.parts().get(0);
            for (int i = 0; i + 1 < outline.length; i += 2) {
                box[0] = Math.min(box[0], outline[i]);
                box[1] = Math.min(box[1], outline[i + 1]);
                box[2] = Math.max(box[2], outline[i]);
                box[3] = Math.max(box[3], outline[i + 1]);
            }
        }
        return new double[] {(box[0] + box[2]) / 2, (box[1] + box[3]) / 2};
    }

    private static String text(MapFeature feature, String name) {
        @Nullable String first = null;
        for (MapProperty property : feature.properties()) {
            if (first == null && property.name().equals(name)) {
                first = property.shortText();
            }
        }
        return first == null ? "" : LINE_BREAKS.matcher(first).replaceAll(" ");
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
