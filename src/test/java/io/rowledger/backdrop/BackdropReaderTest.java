package io.rowledger.backdrop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.MapReference;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.plugins.tiff.GeoTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFTag;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BackdropReaderTest {
    private static final int RED = 0xc00000;
    private static final int GREEN = 0x00c000;
    /** JPEG changes colors by some steps of 255. */
    private static final int TOLERANCE = 24;

    private static final LocalPlane PLANE = new LocalPlane(41.5, -93.5);
    private static final double[] FIELD = {-200, -100, 200, 100};

    @TempDir
    Path folder;

    /** The example of package-info. */
    @Test
    void a_world_file_names_the_center_of_the_upper_left_pixel() {
        GeoReference reference = GeoReference.ofWorldFile(
                List.of("0.5", "0", "0", "-0.5", "500000.25", "4600000.25"), MapReference.DEGREES, "f.jgw");
        double[] a = reference.affine();
        assertArrayEquals(new double[] {0.5, 0, 500000, 0, -0.5, 4600000.5}, a, 1e-9);
        assertEquals(500005, a[0] * 10 + a[1] * 4 + a[2], 1e-9);
        assertEquals(4599998.5, a[3] * 10 + a[4] * 4 + a[5], 1e-9);
    }

    /** A picture of 600 m by 400 m about the origin, red in the west and green in the east, in degrees. */
    private Path degrees(String format) throws IOException {
        double[] southWest = new double[2];
        double[] northEast = new double[2];
        PLANE.inverse(-300, -200, southWest);
        PLANE.inverse(300, 200, northEast);
        BufferedImage image = halves(600, 400);
        Path file = folder.resolve("ground." + format);
        ImageIO.write(image, format, file.toFile());
        double dx = (northEast[1] - southWest[1]) / 600;
        double dy = (southWest[0] - northEast[0]) / 400;
        world(file, dx, dy, southWest[1] + dx / 2, northEast[0] + dy / 2);
        return file;
    }

    private static BufferedImage halves(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                image.setRGB(x, y, x < width / 2 ? RED : GREEN);
            }
        }
        return image;
    }

    private static void world(Path file, double dx, double dy, double x, double y) throws IOException {
        String name = file.getFileName().toString();
        String ending = name.endsWith("png") ? "pgw" : name.endsWith("tif") ? "tfw" : "jgw";
        Path world = file.resolveSibling(name.substring(0, name.lastIndexOf('.') + 1) + ending);
        Files.writeString(world, String.format(Locale.ROOT, "%.12f%n0%n0%n%.12f%n%.12f%n%.12f%n", dx, dy, x, y));
    }

    @ParameterizedTest
    @CsvSource({"jpg", "png", "tif"})
    void a_picture_with_a_world_file_lies_where_it_says(String format) throws IOException {
        Backdrop backdrop = BackdropReader.read(degrees(format), PLANE, FIELD);
        assertArrayEquals(
                new double[] {-220, -110, 220, 110}, backdrop.bounds(), 1e-9, "five percent around the field");
        BufferedImage seen = ImageIO.read(new ByteArrayInputStream(backdrop.jpeg()));
        assertEquals(440, seen.getWidth(), 2);
        assertEquals(220, seen.getHeight(), 2);
        assertColor(RED, seen, 217, 110);
        assertColor(GREEN, seen, 223, 110);
    }

    /**
     * UTM zone 15 north has its central meridian at 93° west: there easting 500,000 m, and the northing is the meridian distance
     * times 0.9996 (J. Snyder, Map Projections: A Working Manual, USGS 1395, 1987, equations 3-21 and 8-9).
     */
    @Test
    void a_picture_in_utm_is_read_by_its_prj() throws IOException {
        double a = 6378137;
        double e2 = 0.00669437999014;
        double phi = Math.toRadians(41.5);
        double m = a
                * ((1 - e2 / 4 - 3 * e2 * e2 / 64 - 5 * e2 * e2 * e2 / 256) * phi
                        - (3 * e2 / 8 + 3 * e2 * e2 / 32 + 45 * e2 * e2 * e2 / 1024) * Math.sin(2 * phi)
                        + (15 * e2 * e2 / 256 + 45 * e2 * e2 * e2 / 1024) * Math.sin(4 * phi)
                        - 35 * e2 * e2 * e2 / 3072 * Math.sin(6 * phi));
        Path file = folder.resolve("utm.png");
        ImageIO.write(halves(300, 200), "png", file.toFile());
        world(file, 2, -2, 500000 - 300 + 1, m * 0.9996 + 200 - 1);
        Files.writeString(
                folder.resolve("utm.prj"),
                "PROJCS[\"UTM 15N\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],"
                        + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
                        + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",-93],"
                        + "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],"
                        + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]");
        Backdrop backdrop = BackdropReader.read(file, new LocalPlane(41.5, -93), FIELD);
        BufferedImage seen = ImageIO.read(new ByteArrayInputStream(backdrop.jpeg()));
        int middle = seen.getWidth() / 2;
        assertColor(RED, seen, middle - 3, seen.getHeight() / 2);
        assertColor(GREEN, seen, middle + 3, seen.getHeight() / 2);
        double[] at = MapReference.ofEpsg(32615, "f").toLonLat(500000, m * 0.9996);
        assertArrayEquals(new double[] {-93, 41.5}, at, 1e-7);
    }

    /** A GeoTIFF as its standard has it: pixel size, one tie point and the number of the coordinate system. */
    private Path geoTiff(int epsg, double x, double y) throws IOException {
        BufferedImage image = halves(300, 200);
        ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
        TIFFDirectory tags = TIFFDirectory.createFromMetadata(writer.getDefaultImageMetadata(
                ImageTypeSpecifier.createFromRenderedImage(image), writer.getDefaultWriteParam()));
        GeoTIFFTagSet set = GeoTIFFTagSet.getInstance();
        tags.addTIFFField(new TIFFField(
                set.getTag(GeoTIFFTagSet.TAG_MODEL_PIXEL_SCALE), TIFFTag.TIFF_DOUBLE, 3, new double[] {2, 2, 0}));
        tags.addTIFFField(new TIFFField(
                set.getTag(GeoTIFFTagSet.TAG_MODEL_TIE_POINT), TIFFTag.TIFF_DOUBLE, 6, new double[] {0, 0, 0, x, y, 0
                }));
        char[] keys = {1, 1, 1, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, (char) epsg};
        tags.addTIFFField(
                new TIFFField(set.getTag(GeoTIFFTagSet.TAG_GEO_KEY_DIRECTORY), TIFFTag.TIFF_SHORT, keys.length, keys));
        Path file = folder.resolve("geo.tif");
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
            writer.setOutput(out);
            writer.write(new IIOImage(image, null, tags.getAsMetadata()));
        }
        return file;
    }

    @Test
    void a_geotiff_needs_no_other_file() throws IOException {
        Path file = geoTiff(26915, 500000 - 300, 4_594_030 + 200);
        double[] middle = MapReference.ofEpsg(26915, "f").toLonLat(500000, 4_594_030);
        Backdrop backdrop = BackdropReader.read(file, new LocalPlane(middle[1], middle[0]), FIELD);
        BufferedImage seen = ImageIO.read(new ByteArrayInputStream(backdrop.jpeg()));
        assertColor(RED, seen, seen.getWidth() / 2 - 3, seen.getHeight() / 2);
        assertColor(GREEN, seen, seen.getWidth() / 2 + 3, seen.getHeight() / 2);
    }

    @Test
    void a_geotiff_in_an_unknown_system_is_refused() throws IOException {
        Path file = geoTiff(2193, 1_500_000, 5_400_000);
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> BackdropReader.read(file, PLANE, FIELD));
        assertTrue(e.getMessage().contains("EPSG:2193"), e.getMessage());
    }

    private static void assertColor(int rgb, BufferedImage image, int x, int y) {
        int seen = image.getRGB(x, y);
        for (int shift = 0; shift <= 16; shift += 8) {
            assertEquals(rgb >> shift & 255, seen >> shift & 255, TOLERANCE, "at " + x + ", " + y);
        }
    }

    @Test
    void a_picture_of_another_field_is_refused() throws IOException {
        Path file = degrees("png");
        UnusableInputException e = assertThrows(
                UnusableInputException.class, () -> BackdropReader.read(file, new LocalPlane(42.5, -93.5), FIELD));
        assertTrue(e.getMessage().contains("doesn't show the field"), e.getMessage());
    }

    @Test
    void a_picture_without_a_place_is_refused() throws IOException {
        Path file = folder.resolve("photo.jpg");
        ImageIO.write(halves(60, 40), "jpg", file.toFile());
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> BackdropReader.read(file, PLANE, FIELD));
        assertTrue(e.getMessage().contains("no world file"), e.getMessage());
    }

    @Test
    void coordinates_that_are_no_degrees_need_a_prj() throws IOException {
        Path file = folder.resolve("utm.png");
        ImageIO.write(halves(60, 40), "png", file.toFile());
        world(file, 2, -2, 500000, 4594000);
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> BackdropReader.read(file, PLANE, FIELD));
        assertTrue(e.getMessage().contains(".prj"), e.getMessage());
    }

    @Test
    void what_is_no_picture_is_refused() throws IOException {
        for (String text : List.of("", "no picture", "II*\u0000\u0008\u0000\u0000\u0000", "\u0089PNG\r\n\u001a\n")) {
            Path file =
                    Files.write(folder.resolve("x.tif"), text.getBytes(java.nio.charset.StandardCharsets.ISO_8859_1));
            assertThrows(UnusableInputException.class, () -> BackdropReader.read(file, PLANE, FIELD), text);
        }
        assertThrows(UnusableInputException.class, () -> BackdropReader.read(folder, PLANE, FIELD));
        assertThrows(UnusableInputException.class, () -> BackdropReader.read(folder.resolve("none.tif"), PLANE, FIELD));
    }

    @Test
    void the_picture_in_the_page_stays_small() throws IOException {
        Path file = folder.resolve("large.jpg");
        BufferedImage noise = new BufferedImage(2600, 2000, BufferedImage.TYPE_INT_RGB);
        java.util.SplittableRandom random = new java.util.SplittableRandom(4);
        for (int y = 0; y < 2000; y++) {
            for (int x = 0; x < 2600; x++) {
                noise.setRGB(x, y, random.nextInt(0x1000000));
            }
        }
        ImageIO.write(noise, "jpg", file.toFile());
        world(file, 1e-6, -1e-6, -93.502, 41.5015);
        byte[] once = BackdropReader.read(file, PLANE, FIELD).jpeg();
        assertTrue(once.length <= BackdropReader.MAX_BYTES, once.length + " bytes");
        assertArrayEquals(once, BackdropReader.read(file, PLANE, FIELD).jpeg(), "the same picture, the same bytes");
    }
}
