package io.rowledger.maps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Map files that would harm: refused with a message, before they cost memory, time or a file outside their place. */
@Tag("slow")
class MapLimitsTest {
    private static final String POLYGON =
            "{\"type\":\"Polygon\",\"coordinates\":[[[-93,45],[-92.99,45],[-92.99,45.01],[-93,45]]]}";
    private static final String SQUARE =
            "<Placemark><Polygon><outerBoundaryIs><LinearRing><coordinates>-93,45 -92.99,45"
                    + " -92.99,45.01 -93,45</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>";

    @TempDir
    Path dir;

    private String refused(Path file) {
        UnusableInputException x =
                assertThrows(UnusableInputException.class, () -> MapReader.read(file, MapUse.BOUNDARY));
        assertTrue(x.getMessage().contains(file.getFileName().toString()), x.getMessage());
        return x.getMessage();
    }

    private interface Filling {
        void into(OutputStream out) throws IOException;
    }

    private Path zip(String name, Filling filling) throws IOException {
        Path file = dir.resolve("map.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            zip.putNextEntry(new ZipEntry(name));
            filling.into(zip);
            zip.closeEntry();
        }
        return file;
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @TestFactory
    Stream<DynamicTest> paths_that_climb_out_of_an_archive_are_refused() {
        return Stream.of(
                        "../field.geojson",
                        "maps/../../field.geojson",
                        "/etc/field.geojson",
                        "..\\..\\field.geojson",
                        "C:\\field.geojson",
                        "c:field.geojson",
                        "../doc.kml",
                        "files/../../doc.kml",
                        "../field.shp",
                        "..\\field.dbf")
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Path file = zip(name, out -> out.write(utf8(POLYGON)));
                    assertTrue(refused(file).contains(name));
                    try (Stream<Path> beside = Files.list(dir)) {
                        assertEquals(List.of(file), beside.toList());
                    }
                }));
    }

    @Test
    void two_dots_within_a_name_climb_nowhere() throws IOException {
        Path file = zip("a..b/field..1.geojson", out -> out.write(utf8(POLYGON)));
        assertEquals(1, MapReader.read(file, MapUse.BOUNDARY).features().size());
    }

    @TestFactory
    Stream<DynamicTest> a_zip_that_unpacks_to_more_than_a_map_is_refused() {
        return Stream.of("bomb.geojson", "bomb.kml", "bomb.shp")
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Path file = zip(name, out -> {
                        byte[] blanks = new byte[1 << 20];
                        java.util.Arrays.fill(blanks, (byte) ' ');
                        for (int mb = 0; mb < 65; mb++) {
                            out.write(blanks);
                        }
                    });
                    assertTrue(Files.size(file) < 200_000, "small on disk: " + Files.size(file));
                    String message = refused(file);
                    assertTrue(message.contains("more than 64 MB") && message.contains(name), message);
                }));
    }

    /** Maps are not read from gzip at all, so there is nothing to swell. */
    @Test
    void a_gzip_that_unpacks_to_more_than_a_map_is_refused_unread() throws IOException {
        Path file = dir.resolve("bomb.geojson.gz");
        try (OutputStream gz = new GZIPOutputStream(Files.newOutputStream(file))) {
            for (int mb = 0; mb < 65; mb++) {
                gz.write(new byte[1 << 20]);
            }
        }
        assertTrue(refused(file).contains("a gzip file"));
    }

    @Test
    void a_zip_of_very_many_files_is_refused() throws IOException {
        Path file = dir.resolve("many.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (int i = 0; i < 1001; i++) {
                zip.putNextEntry(new ZipEntry("f" + i + ".txt"));
                zip.closeEntry();
            }
        }
        assertTrue(refused(file).contains("1001 files"));
    }

    @Test
    void a_zip_within_a_zip_is_not_followed() throws IOException {
        Path inner = Files.move(zip("field.geojson", out -> out.write(utf8(POLYGON))), dir.resolve("inner.zip"));
        Path file = zip("inner.zip", out -> Files.copy(inner, out));
        assertTrue(refused(file).contains("without a map"));
    }

    /** The first bytes of each kind, and then nothing for 65 MB, which takes no room on the disk. */
    @TestFactory
    Stream<DynamicTest> a_file_larger_than_any_map_is_refused_unread() {
        return Stream.of("{\"type\":", "<kml>", "SQLite format 3\0", "PK\u0003\u0004", "\0\0'\n")
                .map(start -> DynamicTest.dynamicTest(start.replaceAll("[^ -~]", "."), () -> {
                    Path file = dir.resolve("large.map");
                    Files.write(file, start.getBytes(StandardCharsets.ISO_8859_1));
                    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
                        sparse.setLength(65L << 20);
                    }
                    assertTrue(refused(file).contains("more than 64 MB"));
                }));
    }

    private Path kml(String text) throws IOException {
        return Files.writeString(dir.resolve("field.kml"), text);
    }

    @Test
    void a_document_type_is_refused_whether_it_fetches_a_file_or_grows_or_does_nothing() throws IOException {
        Path secret = Files.writeString(dir.resolve("secret.txt"), "well kept");
        StringBuilder growing = new StringBuilder("<!DOCTYPE kml [<!ENTITY e0 \"ha\">");
        for (int i = 1; i < 40; i++) {
            growing.append("<!ENTITY e")
                    .append(i)
                    .append(" \"&e")
                    .append(i - 1)
                    .append(";&e")
                    .append(i - 1)
                    .append(";\">");
        }
        for (String doctype : List.of(
                "<!DOCTYPE kml [<!ENTITY s SYSTEM \"" + secret.toUri() + "\">]>",
                "<!DOCTYPE kml SYSTEM \"http://127.0.0.1:1/kml.dtd\">",
                growing + "]>",
                "<!DOCTYPE kml>")) {
            for (String entity : List.of("&s;", "&e39;", "")) {
                String text = "<?xml version=\"1.0\"?>" + doctype + "<kml>"
                        + SQUARE.replace("<Polygon>", "<name>" + entity + "</name><Polygon>") + "</kml>";
                String message = refused(kml(text));
                assertTrue(message.contains("a document type"), message);
                assertFalse(message.contains("well kept"));
                Path kmz = zip("doc.kml", out -> out.write(utf8(text)));
                assertTrue(refused(kmz).contains("a document type"));
            }
        }
    }

    @Test
    void an_entity_nobody_declared_is_refused() throws IOException {
        String message = refused(kml("<kml>" + SQUARE.replace("<Polygon>", "<name>&s;</name><Polygon>") + "</kml>"));
        assertTrue(message.contains("entity") || message.contains("no well-formed XML"), message);
    }

    /** The JDK's parser would print "[Fatal Error]" to the console, beside the message or instead of it. */
    @Test
    void kml_that_is_not_in_its_character_set_is_refused_and_nothing_is_printed() throws IOException {
        PrintStream console = System.err;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
        try {
            for (String start :
                    List.of("", "<?xml version=\"1.0\"?>", "<?xml version=\"1.0\" encoding=\"US-ASCII\"?>")) {
                String text = start + "<kml>" + SQUARE.replace("<Polygon>", "<name>\u00e4</name><Polygon>") + "</kml>";
                Path file = Files.write(dir.resolve("field.kml"), text.getBytes(StandardCharsets.ISO_8859_1));
                assertTrue(refused(file).contains("no well-formed XML"));
            }
            Path file = kml("<?xml version=\"1.0\" encoding=\"x-none\"?><kml/>");
            assertTrue(refused(file).contains("the character set x-none"));
        } finally {
            System.setErr(console);
        }
        assertEquals("", printed.toString(StandardCharsets.UTF_8));
    }

    @Test
    void kml_in_every_usual_character_set_is_the_same() throws IOException {
        String body = "<kml>" + SQUARE.replace("<Polygon>", "<name>S\u00fcd</name><Polygon>") + "</kml>";
        for (String name : List.of("UTF-8", "ISO-8859-1", "windows-1252", "UTF-16", "UTF-16LE", "UTF-16BE")) {
            for (String mark : name.equals("UTF-8") || name.endsWith("E") ? List.of("", "\ufeff") : List.of("")) {
                String text = mark + "<?xml version=\"1.0\" encoding=\"" + name + "\"?>" + body;
                Path file = Files.write(dir.resolve("field.kml"), text.getBytes(Charset.forName(name)));
                assertEquals(
                        "S\u00fcd",
                        MapReader.read(file, MapUse.BOUNDARY).features().get(0).name(),
                        name + mark);
            }
        }
    }

    @Test
    void links_are_not_followed() throws IOException {
        Path file = kml("<kml><NetworkLink><Link><href>http://127.0.0.1:1/more.kml</href></Link></NetworkLink>" + SQUARE
                + "</kml>");
        assertEquals(1, MapReader.read(file, MapUse.BOUNDARY).features().size());
    }

    @Test
    void geometries_deep_within_geometries_are_refused_and_other_depth_is_passed_over() throws IOException {
        String deep = "<MultiGeometry>".repeat(100) + "</MultiGeometry>".repeat(100);
        assertTrue(
                refused(kml("<kml><Placemark>" + deep + "</Placemark></kml>")).contains("more than 50 deep"));
        String style = "<a>".repeat(100_000) + "</a>".repeat(100_000);
        Path file = kml("<kml><Placemark>" + style + "</Placemark>" + SQUARE + "</kml>");
        assertEquals(2, MapReader.read(file, MapUse.BOUNDARY).features().size());
    }

    @Test
    void geojson_nested_without_end_is_refused() throws IOException {
        Path file = Files.writeString(
                dir.resolve("deep.geojson"), "{\"type\":\"Polygon\",\"coordinates\":" + "[".repeat(1_000_000));
        refused(file);
    }

    /** A polygon record that says it has two thousand million parts, or corners, in a file of 200 bytes. */
    @Test
    void a_shapefile_is_not_believed_about_its_counts() throws IOException {
        for (int at : new int[] {36, 40}) {
            ByteBuffer shp = ByteBuffer.allocate(200);
            shp.putInt(0, 9994)
                    .putInt(24, 100)
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .putInt(28, 1000)
                    .putInt(32, 5);
            shp.order(ByteOrder.BIG_ENDIAN).putInt(100, 1).putInt(104, 46);
            shp.order(ByteOrder.LITTLE_ENDIAN)
                    .putInt(108, 5)
                    .putInt(108 + 36, 1)
                    .putInt(108 + 40, 4);
            shp.putInt(108 + at, Integer.MAX_VALUE);
            Path file = Files.write(dir.resolve("field.shp"), shp.array());
            assertTrue(refused(file).contains("damaged"));
        }
    }

    private Path geoPackage(String... statements) throws IOException, SQLException {
        Path file = dir.resolve("field.gpkg");
        Files.deleteIfExists(file);
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = db.createStatement()) {
            s.execute("CREATE TABLE gpkg_spatial_ref_sys (srs_id INTEGER, organization TEXT,"
                    + " organization_coordsys_id INTEGER, definition TEXT)");
            s.execute("INSERT INTO gpkg_spatial_ref_sys VALUES (4326, 'EPSG', 4326, '')");
            s.execute("CREATE TABLE gpkg_contents (table_name TEXT, data_type TEXT)");
            s.execute("INSERT INTO gpkg_contents VALUES ('field', 'features')");
            s.execute("CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT, srs_id INTEGER)");
            s.execute("INSERT INTO gpkg_geometry_columns VALUES ('field', 'geom', 4326)");
            for (String statement : statements) {
                s.execute(statement);
            }
        }
        return file;
    }

    private static final String ENDLESS =
            "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT i AS fid, x'00' AS geom FROM n";

    @Test
    void a_geopackage_whose_table_is_an_endless_view_is_refused() throws Exception {
        assertTrue(refused(geoPackage("CREATE VIEW field AS " + ENDLESS)).contains("a view is not enough"));
    }

    @Test
    void a_geopackage_whose_list_of_tables_is_an_endless_view_is_refused() throws Exception {
        Path file = geoPackage(
                "DROP TABLE gpkg_spatial_ref_sys",
                "CREATE VIEW gpkg_spatial_ref_sys AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n)"
                        + " SELECT i AS srs_id, 'EPSG' AS organization, 1 AS organization_coordsys_id, '' AS definition"
                        + " FROM n WHERE i % 2 = 3",
                "CREATE TABLE field (fid INTEGER PRIMARY KEY, geom BLOB)");
        assertTrue(refused(file).contains("can't be read"));
    }

    @Test
    void a_geopackage_that_makes_values_up_larger_than_any_map_is_refused() throws Exception {
        Path file = geoPackage(
                "CREATE TABLE field (fid INTEGER PRIMARY KEY, geom BLOB, big BLOB AS (zeroblob(500000000)))",
                "INSERT INTO field (geom) VALUES (x'00')");
        assertTrue(refused(file).contains("can't be read"));
    }

    /** Found by damaging files at random: they crashed the readers or kept them busy for minutes. */
    @Test
    void geojson_whose_type_is_a_list_is_refused() throws IOException {
        String deep = "{\"type\": [[1]]\"FeatureCollection\", \"features\": []}";
        assertTrue(refused(Files.writeString(dir.resolve("a.geojson"), deep)).contains("no JSON"));
        Path file = Files.writeString(
                dir.resolve("b.geojson"),
                "{\"type\":{\"type\":\"x\"},\"coordinates\":{\"a\":[1]},\"b\":" + POLYGON + "}");
        assertEquals(
                List.of(),
                MapReader.read(file, MapUse.BOUNDARY).features().get(0).shapes());
    }

    @Test
    void a_projection_turned_by_more_than_a_turn_is_refused() throws Exception {
        for (String wrong : List.of(
                "UNIT[\"Degree\",2147483647]|PARAMETER[\"False_Easting\",0.0]",
                "UNIT[\"Degree\",0.0174532925199433]|PARAMETER[\"False_Easting\",1e300]")) {
            String[] parts = wrong.split("\\|", -1);
            String wkt = "PROJCS[\"A\",GEOGCS[\"G\",DATUM[\"D_North_American_1983\",SPHEROID[\"GRS_1980\",6378137.0,"
                    + "298.257222101]],PRIMEM[\"Greenwich\",0.0]," + parts[0] + "],PROJECTION[\"Albers\"]," + parts[1]
                    + ",PARAMETER[\"Central_Meridian\",-96.0],PARAMETER[\"Standard_Parallel_1\",29.5],"
                    + "PARAMETER[\"Standard_Parallel_2\",45.5],PARAMETER[\"Latitude_Of_Origin\",23.0],UNIT[\"Meter\",1.0]]";
            ReferenceSystem.NotUsable found =
                    assertThrows(ReferenceSystem.NotUsable.class, () -> ReferenceSystem.of(wkt));
            assertTrue(found.found().contains("can't be") || found.found().contains("unit"), found.found());
        }
    }
}
