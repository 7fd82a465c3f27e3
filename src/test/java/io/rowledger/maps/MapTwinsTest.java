package io.rowledger.maps;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.field.Boundary;
import io.rowledger.field.BoundaryReader;
import io.rowledger.field.KeepOutReader;
import io.rowledger.field.KeepOuts;
import io.rowledger.field.Prescription;
import io.rowledger.field.PrescriptionReader;
import io.rowledger.geo.LocalPlane;
import io.rowledger.rig.PrescriptionColumns;
import io.rowledger.rig.Product;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.locationtech.jts.geom.Envelope;

/**
 * The same boundary, prescription and keep-outs in every format: what GDAL wrote and PROJ projected (see each folder's
 * why.txt) gives the figures of the plain GeoJSON.
 */
class MapTwinsTest {
    private static final Path CASES = Path.of("src/test/resources/cases/maps");
    private static final Path RIG = Path.of("sample-logs/clean/rig.yaml");
    /** Two millimeters on the ground: what text formats round to and projections leave. */
    private static final double DEGREES = 2e-8;
    /** An edge of 8 km moved by 0.1 mm. */
    private static final double AREA_M2 = 0.8;

    private static final LocalPlane PLANE = new LocalPlane(41.5, -93.5);
    private static final Envelope DRIVEN = new Envelope(-100, 100, -100, 100);

    /** The file to name among a folder's parts. */
    private static Path map(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.filter(path -> !path.toString().matches(".*\\.(txt|dbf|shx|prj|cpg)"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static Stream<DynamicTest> twins(String use, int least, Check check) throws IOException {
        List<Path> folders;
        try (Stream<Path> list = Files.list(CASES)) {
            folders = list.filter(path -> path.getFileName().toString().startsWith(use))
                    .sorted()
                    .toList();
        }
        assertTrue(folders.size() >= least, folders.size() + " folders");
        Path plain = CASES.resolve(use + "-geojson").resolve(use + ".geojson");
        return folders.stream()
                .map(folder -> DynamicTest.dynamicTest(
                        folder.getFileName().toString(), () -> check.holds(plain, map(folder))));
    }

    private interface Check {
        void holds(Path plain, Path twin) throws IOException;
    }

    @TestFactory
    Stream<DynamicTest> every_boundary_is_its_plain_twin() throws IOException {
        return twins("boundary", 12, (plain, twin) -> {
            assertSameFeatures(plain, twin, MapUse.BOUNDARY);
            Boundary expected = BoundaryReader.read(plain, PLANE);
            Boundary found = BoundaryReader.read(twin, PLANE);
            assertEquals(expected.name(), found.name());
            assertEquals(expected.area().getArea(), found.area().getArea(), AREA_M2);
            assertFalse(found.repaired());
        });
    }

    @TestFactory
    Stream<DynamicTest> every_prescription_is_its_plain_twin() throws IOException {
        List<Product> products = RigReader.read(RIG).rig().products();
        return twins("prescription", 12, (plain, twin) -> {
            assertSameFeatures(plain, twin, MapUse.PRESCRIPTION);
            Prescription expected = PrescriptionReader.read(plain, PLANE, DRIVEN, products, PrescriptionColumns.NONE);
            Prescription found = PrescriptionReader.read(twin, PLANE, DRIVEN, products, PrescriptionColumns.NONE);
            assertEquals(expected.zones().size(), found.zones().size());
            for (int z = 0; z < expected.zones().size(); z++) {
                assertEquals(
                        expected.zones().get(z).name(), found.zones().get(z).name());
                assertArrayEquals(
                        expected.zones().get(z).rateLPerM2(),
                        found.zones().get(z).rateLPerM2());
                assertEquals(
                        expected.zones().get(z).area().getArea(),
                        found.zones().get(z).area().getArea(),
                        AREA_M2);
            }
            // 42 gal/ac in L/m²: 42 · 3.785411784 / 4046.8564224 (NIST SP 811, appendix B).
            assertEquals(42 * 3.785411784 / 4046.8564224, found.zones().get(0).rateLPerM2()[0], 1e-12);
        });
    }

    @TestFactory
    Stream<DynamicTest> every_keep_out_file_is_its_plain_twin() throws IOException {
        return twins("keep-out", 5, (plain, twin) -> {
            KeepOuts expected = KeepOutReader.read(plain, PLANE, DRIVEN, Double.NaN);
            KeepOuts found = KeepOutReader.read(twin, PLANE, DRIVEN, Double.NaN);
            boolean pointsOnly = twin.toString().contains("points");
            assertEquals(pointsOnly ? 1 : 3, found.places().size());
            for (int i = 0; i < found.places().size(); i++) {
                assertEquals(
                        expected.places().get(i).name(), found.places().get(i).name());
                // 1 ft = 0.3048 m exactly.
                assertEquals(
                        new double[] {35, 50, 100.5}[i] * 0.3048,
                        found.places().get(i).setbackM(),
                        1e-12);
                assertEquals(
                        expected.places().get(i).ground().getArea(),
                        found.places().get(i).ground().getArea(),
                        AREA_M2);
            }
        });
    }

    private static void assertSameFeatures(Path plain, Path twin, MapUse use) {
        MapFeatures expected = MapReader.read(plain, use);
        MapFeatures found = MapReader.read(twin, use);
        assertEquals(expected.features().size(), found.features().size());
        boolean said = twin.toString().matches(".*(no-prj|nad83|albers).*");
        assertEquals(said ? 1 : 0, found.notes().size(), found.notes().toString());
        for (int f = 0; f < expected.features().size(); f++) {
            MapFeature a = expected.features().get(f);
            MapFeature b = found.features().get(f);
            assertEquals(a.name(), b.name());
            assertEquals(a.shapes().size(), b.shapes().size());
            for (int s = 0; s < a.shapes().size(); s++) {
                assertEquals(a.shapes().get(s).kind(), b.shapes().get(s).kind());
                List<double[]> rings = a.shapes().get(s).parts();
                assertEquals(rings.size(), b.shapes().get(s).parts().size());
                for (int r = 0; r < rings.size(); r++) {
                    assertSameCorners(rings.get(r), b.shapes().get(s).parts().get(r));
                }
            }
        }
    }

    /** Formats turn rings and begin them elsewhere. */
    private static void assertSameCorners(double[] ring, double[] other) {
        assertEquals(ring.length, other.length);
        for (int i = 0; i < ring.length; i += 2) {
            double nearest = Double.POSITIVE_INFINITY;
            for (int j = 0; j < other.length; j += 2) {
                nearest =
                        Math.min(nearest, Math.max(Math.abs(ring[i] - other[j]), Math.abs(ring[i + 1] - other[j + 1])));
            }
            assertEquals(0, nearest, DEGREES, "corner " + ring[i] + ", " + ring[i + 1]);
        }
    }
}
