package io.rowledger.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.results.WrittenJob;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFImageReadParam;
import javax.imageio.stream.ImageInputStream;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/**
 * The GeoTIFF, read with the JDK's reader; its place worked out from its own keys (OGC 19-008r4) with GeographicLib, which
 * knows nothing of the program's plane, and held against the GeoJSON layers.
 *
 * <p>GeographicLib for Java has no transverse Mercator. But within a field its coordinates are Cassini's: along the central
 * meridian to the north, then square to it. The two differ by s³/(6R²): for s = 1 km by 4 µm (Snyder, USGS Professional
 * Paper 1395, equations 8-1 and 13-1).
 */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("slow")
class ReceivedTiffTest {
    private static final GeometryFactory SHAPES = new GeometryFactory();
    private static final float NO_DATA = -9999;

    private WrittenJob job;
    private Tiff uan;

    /** One file as a stranger sees it. */
    private static final class Tiff {
        final Raster cells;
        final Map<Integer, TIFFField> fields = new HashMap<>();
        final Map<Integer, int[]> keys = new HashMap<>();

        Tiff(Path file) throws IOException {
            ImageReader reader = ImageIO.getImageReadersByFormatName("tiff").next();
            try (ImageInputStream in = ImageIO.createImageInputStream(file.toFile())) {
                reader.setInput(in);
                TIFFImageReadParam param = new TIFFImageReadParam();
                param.setReadUnknownTags(true);
                IIOImage image = reader.readAll(0, param);
                cells = ((BufferedImage) image.getRenderedImage()).getRaster();
                for (TIFFField field :
                        TIFFDirectory.createFromMetadata(image.getMetadata()).getTIFFFields()) {
                    fields.put(field.getTagNumber(), field);
                }
            } finally {
                reader.dispose();
            }
            int[] directory = fields.get(34735).getAsInts();
            assertEquals(1, directory[0]);
            assertEquals(directory.length, 4 + 4 * directory[3]);
            for (int k = 4; k < directory.length; k += 4) {
                assertTrue(k == 4 || directory[k] > directory[k - 4], "keys ascend (OGC 19-008r4, 7.1.1)");
                keys.put(directory[k], new int[] {directory[k + 1], directory[k + 3]});
            }
        }

        /** A key's value, from the directory or the doubles. */
        double key(int id) {
            int[] key = keys.get(id);
            return key[0] == 0 ? key[1] : fields.get(key[0]).getAsDouble(key[1]);
        }

        double rate(int col, int row) {
            return cells.getSampleFloat(col, row, 0);
        }

        /** Latitude and longitude of the middle of a cell. */
        double[] middle(int col, int row) {
            double[] tie = fields.get(33922).getAsDoubles();
            double[] scale = fields.get(33550).getAsDoubles();
            double eastM = tie[3] + (col + 0.5 - tie[0]) * scale[0];
            double northM = tie[4] - (row + 0.5 - tie[1]) * scale[1];
            GeodesicData foot = Geodesic.WGS84.Direct(key(3081), key(3080), 0, northM);
            GeodesicData end = Geodesic.WGS84.Direct(foot.lat2, foot.lon2, 90, eastM);
            return new double[] {end.lat2, end.lon2};
        }
    }

    @BeforeAll
    void write_a_job(@TempDir Path folder) throws IOException {
        job = new WrittenJob(folder);
        uan = new Tiff(job.layer("received-uan.tif"));
    }

    /** Meters about the job's middle, by the lengths of a degree there: within millimeters over this field. */
    private Coordinate local(double latDeg, double lonDeg) {
        double lat0 = uan.key(3081);
        double lon0 = uan.key(3080);
        double metresNorth = Geodesic.WGS84.Inverse(lat0 - 0.001, lon0, lat0 + 0.001, lon0).s12 / 0.002;
        double metresEast = Geodesic.WGS84.Inverse(lat0, lon0 - 0.001, lat0, lon0 + 0.001).s12 / 0.002;
        return new Coordinate((lonDeg - lon0) * metresEast, (latDeg - lat0) * metresNorth);
    }

    private Polygon polygon(JsonNode rings) {
        List<Coordinate> corners = new ArrayList<>();
        rings.get(0)
                .forEach(c -> corners.add(local(c.get(1).asDouble(), c.get(0).asDouble())));
        return SHAPES.createPolygon(corners.toArray(Coordinate[]::new));
    }

    private interface Cell {
        void see(Coordinate middle, double rate);
    }

    private void cells(Cell cell) {
        for (int row = 0; row < uan.cells.getHeight(); row++) {
            for (int col = 0; col < uan.cells.getWidth(); col++) {
                double[] latLon = uan.middle(col, row);
                cell.see(local(latLon[0], latLon[1]), uan.rate(col, row));
            }
        }
    }

    @Test
    void the_keys_say_a_transverse_mercator_of_scale_one_on_wgs_84_in_metres_and_cells_are_areas() {
        // OGC 19-008r4: GTModelType 1 projected, GTRasterType 1 PixelIsArea, method 1 transverse Mercator, 9001 meter.
        assertEquals(1, uan.key(1024));
        assertEquals(1, uan.key(1025));
        assertEquals(4326, uan.key(2048));
        assertEquals(32767, uan.key(3072));
        assertEquals(1, uan.key(3075));
        assertEquals(9001, uan.key(3076));
        assertEquals(0, uan.key(3082));
        assertEquals(0, uan.key(3083));
        assertEquals(1, uan.key(3092));
        assertEquals("-9999", uan.fields.get(42113).getAsString(0));
        assertEquals(3, uan.fields.get(339).getAsInt(0), "IEEE floats");
        assertEquals(32, uan.fields.get(258).getAsInt(0));
    }

    @Test
    void each_product_has_a_file_under_its_own_name() throws IOException {
        Tiff ats = new Tiff(job.layer("received-ats.tif"));
        assertEquals("ATS 12-0-0-26S received, L/ha", ats.fields.get(270).getAsString(0));
        assertEquals("UAN 32-0-0 received, L/ha", uan.fields.get(270).getAsString(0));
        // 30 and 6 gal/ac: rows apart, 5 to 1 in any cell that both reached.
        int seen = 0;
        for (int row = 0; row < uan.cells.getHeight(); row += 7) {
            for (int col = 0; col < uan.cells.getWidth(); col += 7) {
                if (uan.rate(col, row) > 200) {
                    assertEquals(5, uan.rate(col, row) / ats.rate(col, row), 1);
                    seen++;
                }
            }
        }
        assertTrue(seen > 200, seen + " cells");
    }

    @Test
    void cells_lie_where_the_strips_lie_within_a_tenth_of_a_metre() throws IOException {
        List<Polygon> strips = new ArrayList<>();
        job.features("strips.geojson").forEach(strip -> {
            if (strip.get("properties").get("delivering").asBoolean()) {
                strips.add(polygon(strip.get("geometry").get("coordinates")));
            }
        });
        Geometry ground = UnaryUnionOp.union(strips);
        double[] sums = new double[3];
        cells((middle, rate) -> {
            if (rate != NO_DATA) {
                sums[0]++;
                sums[1] += middle.x;
                sums[2] += middle.y;
            }
        });
        // Cells at edges count whole, on all sides alike. Half a cell off would be 0.25 m.
        assertEquals(ground.getCentroid().getX(), sums[1] / sums[0], 0.1);
        assertEquals(ground.getCentroid().getY(), sums[2] / sums[0], 0.1);
        // No ground without a cell, and no cell further out than its own diagonal.
        assertTrue(sums[0] * 0.25 > ground.getArea());
        assertTrue(sums[0] * 0.25 < ground.buffer(0.5 * Math.sqrt(2)).getArea());
    }

    @Test
    void ground_the_plugged_row_left_bare_has_no_rate_and_the_middle_of_the_field_its_target() throws IOException {
        List<PreparedGeometry> bare = new ArrayList<>();
        for (JsonNode place : job.features("skips.geojson")) {
            boolean row = place.get("properties").get("cause").asText().equals("row_not_delivering");
            if (row && place.get("properties").get("area_m2").asDouble() > 50) {
                // A cell whose middle is half a diagonal within the place, and a millimeter, lies in it whole.
                Geometry inside =
                        polygon(place.get("geometry").get("coordinates")).buffer(-0.355);
                bare.add(PreparedGeometryFactory.prepare(inside));
            }
        }
        assertTrue(!bare.isEmpty(), "bare ground behind the plugged row");
        int[] seen = new int[2];
        cells((middle, rate) -> {
            if (bare.stream().anyMatch(place -> place.contains(SHAPES.createPoint(middle)))) {
                assertEquals(NO_DATA, rate, () -> "cell at " + middle);
                seen[0]++;
            }
            seen[1] += rate > 265 && rate < 296 ? 1 : 0;
        });
        assertTrue(seen[0] >= 10, seen[0] + " bare cells");
        // 30 gal/ac are 280.6 L/ha (3.785411784 L over 0.40468564224 ha); most cells within 5 % of it.
        assertTrue(seen[1] * 0.25 > 0.8 * job.analysis.coverage().coveredAreaM2(), seen[1] + " cells on target");
    }

    @Test
    void rates_times_covered_ground_are_the_litres_of_the_log() {
        ReceivedGrid grid = job.analysis.coverage().grid();
        double sumL = 0;
        for (int row = 0; row < grid.rows(); row++) {
            for (int col = 0; col < grid.cols(); col++) {
                double rate = uan.rate(col, grid.rows() - 1 - row);
                sumL += rate == NO_DATA ? 0 : rate / 1e4 * grid.coveredM2()[row * grid.cols() + col];
            }
        }
        double logL = job.analysis.coverage().received().get(0).logVolumeL();
        assertEquals(logL, sumL, logL * 0.001);
        assertEquals(job.job.truth().meteredL()[0], sumL, logL * 0.01);
    }

    @Test
    void the_same_job_gives_the_same_bytes() throws IOException {
        ByteArrayOutputStream again = new ByteArrayOutputStream();
        ReceivedTiff.write(FieldMap.of(job.analysis), 0, again);
        assertArrayEquals(Files.readAllBytes(job.layer("received-uan.tif")), again.toByteArray());
    }

    /** Where GDAL's own programs are installed, they see what the JDK and GeographicLib see. */
    @Test
    void gdal_reads_the_same_place_and_unit() throws IOException, InterruptedException {
        JsonNode info = new ObjectMapper()
                .readTree(
                        gdal("gdalinfo", "-json", job.layer("received-uan.tif").toString()));
        double[] corner = uan.middle(0, 0);
        double[] scale = uan.fields.get(33550).getAsDoubles();
        JsonNode upperLeft = info.get("wgs84Extent").get("coordinates").get(0).get(0);
        // From the corner to the middle of the first cell: half a cell east and south. gdalinfo prints 7 decimals, 1
        // cm.
        Coordinate expected = local(corner[0], corner[1]);
        Coordinate found = local(upperLeft.get(1).asDouble(), upperLeft.get(0).asDouble());
        assertEquals(expected.x - scale[0] / 2, found.x, 0.02);
        assertEquals(expected.y + scale[1] / 2, found.y, 0.02);
        JsonNode band = info.get("bands").get(0);
        assertEquals("Float32", band.get("type").asText());
        assertEquals(-9999, band.get("noDataValue").asDouble());
        assertEquals("L/ha", band.get("unit").asText());
        assertEquals("UAN 32-0-0 received", band.get("description").asText());
    }

    @Test
    void gdal_reads_every_layer_of_the_geopackage_and_the_waypoints() throws IOException, InterruptedException {
        Map<String, Integer> counts = featureCounts("field.gpkg");
        for (String layer : List.of("strips", "overlaps", "skips", "findings")) {
            assertEquals(job.features(layer + ".geojson").size(), counts.get(layer), layer);
        }
        assertTrue(featureCounts("places.gpx").get("waypoints") > 0);
    }

    /** Features by layer as the summary of every layer has them, which reads alike in all versions of ogrinfo. */
    private Map<String, Integer> featureCounts(String file) throws IOException, InterruptedException {
        String text = gdal("ogrinfo", "-so", "-al", job.layer(file).toString());
        Map<String, Integer> counts = new HashMap<>();
        Matcher layer = Pattern.compile("Layer name: (\\S+).*?Feature Count: (\\d+)", Pattern.DOTALL)
                .matcher(text);
        while (layer.find()) {
            counts.put(layer.group(1), Integer.valueOf(layer.group(2)));
        }
        return counts;
    }

    private static String gdal(String... call) throws IOException, InterruptedException {
        Process process;
        try {
            process = new ProcessBuilder(call)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException e) {
            assumeTrue(false, call[0] + " is not installed");
            throw e;
        }
        String text = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), text);
        return text;
    }
}
