package io.rowledger.maps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.field.Boundary;
import io.rowledger.field.BoundaryReader;
import io.rowledger.field.KeepOutReader;
import io.rowledger.field.PrescriptionReader;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.rig.PrescriptionColumns;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Envelope;

/** Where a map lies: far from the log, in which coordinate system, and drawn across itself. */
class MapPlacesTest {
    private static final Path CASES = Path.of("src/test/resources/cases/maps");
    private static final Pattern AWAY = Pattern.compile("(\\d+) km away");
    /** A log north of the maps, which lie about 41.5° N, 93.5° W. */
    private static final double LAT = 44;

    private static final double LON = -93.5;
    private static final LocalPlane ELSEWHERE = new LocalPlane(LAT, LON);
    private static final Envelope DRIVEN = new Envelope(-100, 100, -100, 100);

    @TempDir
    Path dir;

    private static double kmAway(Executable reading) {
        UnusableInputException x = assertThrows(UnusableInputException.class, reading);
        Matcher found = AWAY.matcher(x.getMessage());
        assertTrue(found.find(), x.getMessage());
        return Double.parseDouble(found.group(1));
    }

    /** By GeographicLib, from the log to the nearest corner of a map, km. */
    private static double km(Path plain, MapUse use) {
        double least = Double.POSITIVE_INFINITY;
        for (MapFeature feature : MapReader.read(plain, use).features()) {
            for (MapShape shape : feature.shapes()) {
                for (double[] part : shape.parts()) {
                    for (int i = 0; i < part.length; i += 2) {
                        least = Math.min(least, Geodesic.WGS84.Inverse(LAT, LON, part[i + 1], part[i]).s12 / 1000);
                    }
                }
            }
        }
        return least;
    }

    @TestFactory
    Stream<DynamicTest> a_map_nowhere_near_the_log_says_how_far_off_it_is_in_every_format() {
        return Stream.of(
                        "boundary-geojson/boundary.geojson",
                        "boundary-kml/boundary.kml",
                        "boundary-kmz/boundary.kmz",
                        "boundary-shapefile/boundary.shp",
                        "boundary-shapefile-utm/boundary.shp",
                        "boundary-shapefile-zip/boundary.zip",
                        "boundary-gpkg/boundary.gpkg",
                        "prescription-geojson/prescription.geojson",
                        "prescription-kml/prescription.kml",
                        "prescription-shapefile/prescription.shp",
                        "prescription-gpkg/prescription.gpkg",
                        "keep-out-geojson/keep-out.geojson",
                        "keep-out-kml/keep-out.kml",
                        "keep-out-gpkg/keep-out.gpkg")
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Path map = CASES.resolve(name);
                    String use = name.substring(0, name.indexOf('/')).replaceAll("-(geojson|km|shape|gpkg).*", "");
                    Path plain = CASES.resolve(use + "-geojson").resolve(use + ".geojson");
                    double away;
                    if (use.equals("boundary")) {
                        away = kmAway(() -> BoundaryReader.read(map, ELSEWHERE));
                    } else if (use.equals("prescription")) {
                        var products = RigReader.read(Path.of("sample-logs/clean/rig.yaml"))
                                .rig()
                                .products();
                        away = kmAway(() ->
                                PrescriptionReader.read(map, ELSEWHERE, DRIVEN, products, PrescriptionColumns.NONE));
                    } else {
                        away = kmAway(() -> KeepOutReader.read(map, ELSEWHERE, DRIVEN, Double.NaN));
                    }
                    // Whole kilometers, from the box around the map and the 100 m driven.
                    assertEquals(km(plain, MapUse.BOUNDARY), away, 1.2);
                }));
    }

    private Path copy(String folder) throws IOException {
        try (Stream<Path> parts = Files.list(CASES.resolve(folder))) {
            for (Path part : parts.toList()) {
                Files.copy(part, dir.resolve(part.getFileName().toString()));
            }
        }
        return dir.resolve("boundary.shp");
    }

    /** The same eastings under the next zone's .prj lie six degrees of longitude further on: the file is believed. */
    @Test
    void the_prj_file_decides_where_a_shapefile_lies() throws IOException {
        Path shp = copy("boundary-shapefile-utm");
        LocalPlane plane = new LocalPlane(41.5, -93.5);
        double areaM2 = BoundaryReader.read(shp, plane).area().getArea();
        Path prj = dir.resolve("boundary.prj");
        String zone15 = Files.readString(prj);
        assertTrue(zone15.contains("\"Central_Meridian\",-93"), zone15);
        Files.writeString(prj, zone15.replaceAll("\"Central_Meridian\",-93(\\.0)?", "\"Central_Meridian\",-87"));
        double away = kmAway(() -> BoundaryReader.read(shp, plane));
        // Six degrees along the parallel, by GeographicLib.
        assertEquals(Geodesic.WGS84.Inverse(41.5, -93.5, 41.5, -87.5).s12 / 1000, away, 12);
        Boundary moved = BoundaryReader.read(shp, new LocalPlane(41.5, -87.5));
        assertEquals(areaM2, moved.area().getArea(), areaM2 * 1e-6);
    }

    @Test
    void a_prj_file_of_a_datum_that_needs_a_grid_is_refused() throws IOException {
        Path shp = copy("boundary-shapefile");
        // EPSG:4267, as in the EPSG register.
        Files.writeString(
                dir.resolve("boundary.prj"),
                "GEOGCS[\"GCS_North_American_1927\",DATUM[\"D_North_American_1927\",SPHEROID[\"Clarke_1866\",6378206.4,"
                        + "294.9786982]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]");
        UnusableInputException x =
                assertThrows(UnusableInputException.class, () -> BoundaryReader.read(shp, new LocalPlane(41.5, -93.5)));
        assertTrue(x.getMessage().contains("1927") && x.getMessage().contains(".prj"), x.getMessage());
        Files.writeString(dir.resolve("boundary.prj"), "north is up");
        assertThrows(UnusableInputException.class, () -> BoundaryReader.read(shp, new LocalPlane(41.5, -93.5)));
    }

    @Test
    void an_outline_that_crosses_itself_is_repaired_whatever_the_format() throws IOException {
        Path kml = Files.writeString(
                dir.resolve("bow.kml"),
                "<kml><Placemark><Polygon><outerBoundaryIs><LinearRing><coordinates>-93.5,44 -93.494,44.004 -93.494,44"
                        + " -93.5,44.004 -93.5,44</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark></kml>");
        Boundary b = BoundaryReader.read(kml, ELSEWHERE);
        assertTrue(b.repaired());
        assertTrue(b.area().isValid());
        assertEquals(2, b.area().getNumGeometries(), "two triangles");
        assertEquals(List.of(), b.notes());
    }
}
