package io.rowledger.log.source;

import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapReader;
import io.rowledger.maps.MapShape;
import io.rowledger.maps.MapUse;
import java.nio.file.Path;
import java.util.List;

/** The shapes of a log that holds the ground it covered as polygons instead of points. */
public final class LoggedPolygons {
    private LoggedPolygons() {}

    /**
     * Returns true if a log is a map file whose first shape is a polygon.
     *
     * @throws io.rowledger.finding.UnusableInputException if it is a map file that can't be read
     */
    public static boolean are(Path log) {
        LogContainer container = LogContainer.of(log);
        return container != null && container.isMap() && in(MapReader.read(log, MapUse.LOG));
    }

    /** Returns the polygons of each feature of such a log, in the order of the file; an empty list for a feature without any. */
    public static List<List<MapShape>> of(Path log) {
        return MapReader.read(log, MapUse.LOG).features().stream()
                .map(MapFeature::shapes)
                .toList();
    }

    static boolean in(MapFeatures source) {
        return source.features().stream()
                .flatMap(feature -> feature.shapes().stream())
                .findFirst()
                .filter(shape -> shape.kind() == MapShape.Kind.POLYGON)
                .isPresent();
    }
}
