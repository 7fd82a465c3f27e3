package io.rowledger.log;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.ColumnName;
import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapProperty;
import io.rowledger.maps.MapReader;
import io.rowledger.maps.MapUse;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Tells a map file that is a log from one that is a boundary or anything else, by the names of its attributes. */
public final class MapLog {
    /** Features looked at. */
    private static final int MAX_FEATURES = 20;

    private MapLog() {}

    /** Returns true if the features of a map file have an attribute whose name is that of a flow or a rate. */
    public static boolean is(Path map) {
        List<MapFeature> features;
        try {
            features = MapReader.read(map, MapUse.LOG).features();
        } catch (UnusableInputException e) {
            // What it is for nobody knows; it is not asked about.
            return false;
        }
        return features.stream()
                .limit(MAX_FEATURES)
                .flatMap(feature -> feature.properties().stream())
                .map(MapProperty::name)
                .anyMatch(MapLog::isFlowOrRate);
    }

    private static boolean isFlowOrRate(String name) {
        Optional<ColumnName> column = ColumnName.of(name);
        // A boundary may have an attribute "total" or "amount"; with a unit of volume it is what a meter counted.
        return column.isPresent()
                && column.get().role().quantity().isFlowSource()
                && (!column.get().role().quantity().isBarVolume()
                        || column.get().unit() != null);
    }
}
