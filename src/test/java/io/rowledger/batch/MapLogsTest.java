package io.rowledger.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A map in a season's folder is a log where it has rates and nothing else is a log there. */
class MapLogsTest {
    @TempDir
    Path top;

    private Folder field(String map, String properties, String... others) throws IOException {
        Path field = Files.createDirectories(top.resolve("north"));
        Files.writeString(
                field.resolve(map),
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{" + properties
                        + "},"
                        + "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[-93.5,41.5],[-93.49,41.5],[-93.49,41.51],[-93.5,41.5]]]}}]}");
        for (String other : others) {
            Files.writeString(field.resolve(other), "time,lat,lon,flow[gal/min]\n");
        }
        return Folder.of(top, top.resolve("out"));
    }

    private static List<String> logs(Folder folder) {
        return folder.logFolders().stream()
                .flatMap(each -> each.logs().stream())
                .map(log -> log.getFileName().toString())
                .toList();
    }

    @Test
    void a_map_with_rates_is_a_log_where_it_stands_alone() throws IOException {
        assertEquals(List.of("cover.geojson"), logs(field("cover.geojson", "\"Applied Rate (gal/ac)\":40")));
    }

    @Test
    void beside_another_log_it_is_none() throws IOException {
        Folder folder = field("cover.geojson", "\"Applied Rate (gal/ac)\":40", "log.csv");
        assertEquals(List.of("log.csv"), logs(folder));
        assertEquals(List.of("cover.geojson"), folder.below().get(0).others());
    }

    @Test
    void a_map_without_rates_and_one_named_boundary_are_none() throws IOException {
        assertEquals(List.of(), logs(field("trees.geojson", "\"name\":\"Oak\"")));
        assertEquals(List.of(), logs(field("boundary.geojson", "\"Applied Rate (gal/ac)\":40")));
    }
}
