package io.rowledger.log.source;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.maps.MapReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.jspecify.annotations.Nullable;

/**
 * A log that is not text: points or polygons in a shapefile, GeoPackage, GeoJSON or KML, or a spreadsheet. Each becomes CSV text with a
 * header, so that everything after it reads a CSV log. The first bytes decide, not the name.
 */
enum LogContainer {
    SHAPEFILE("shapefile"),
    ZIPPED_MAP("map in a zip file"),
    GEOPACKAGE("GeoPackage"),
    GEOJSON("GeoJSON"),
    KML("KML"),
    SPREADSHEET("spreadsheet (.xlsx)");

    /** Bytes looked at. */
    private static final int START_BYTES = 2048;
    /** Largest workbook, unpacked, bytes: 144,000 records of 60 columns have half of it. */
    private static final long MAX_UNPACKED_BYTES = 1L << 30;
    /** Unpacked size of a workbook over its packed size from which it is refused; real ones stay below 40. */
    private static final long MAX_RATIO = 200;
    /** Packed size below which the ratio is not looked at, bytes. */
    private static final long MIN_UNPACKED_BYTES = 1 << 20;

    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final Pattern GEOJSON_START =
            Pattern.compile("\\s*\\{(?s:.*)\"(?:type|features|geometry|coordinates|crs|name|bbox)\"\\s*:(?s:.*)");

    /** The name of the first element of an XML file, after a declaration, a document type and comments. */
    private static final Pattern XML_START =
            Pattern.compile("\\s*(?:<[?!](?!--)[^>]*>\\s*|<!--(?s:.*?)-->\\s*)*<(?:\\w+:)?([A-Za-z]\\w*)[\\s>/]");

    /** Files beside a .shp: the reader of maps asks for that. */
    private static final Pattern PART_OF_SHAPEFILE = Pattern.compile("(?i).*\\.(dbf|shx|prj|sbn|sbx)");

    private final String form;

    LogContainer(String form) {
        this.form = form;
    }

    /** The kind of container, for a person. */
    String form() {
        return form;
    }

    /** The container that a file is; null for text and packed text. */
    static @Nullable LogContainer of(Path file) {
        if (Files.isRegularFile(file)
                && PART_OF_SHAPEFILE.matcher(file.toString()).matches()) {
            return SHAPEFILE;
        }
        byte[] start = start(file);
        if (startsWith(start, SQLITE)) {
            return GEOPACKAGE;
        }
        if (startsWith(start, new byte[] {0, 0, 0x27, 0x0A})) {
            return SHAPEFILE;
        }
        if (startsWith(start, new byte[] {'P', 'K', 3, 4})) {
            return inZip(file);
        }
        String text = new String(start, StandardCharsets.UTF_8).replace("\uFEFF", "");
        if (GEOJSON_START.matcher(text).matches()) {
            return GEOJSON;
        }
        Matcher xml = XML_START.matcher(text);
        if (!xml.lookingAt()) {
            return null;
        }
        if (xml.group(1).equals("kml")) {
            return KML;
        }
        boolean gpx = xml.group(1).equals("gpx");
        throw UnusableInputException.found(
                        gpx
                                ? "a GPX file: positions and times without a flow or a rate"
                                : "an XML or HTML file, <" + xml.group(1) + ">")
                .kind(RefusalKind.NOT_A_LOG)
                .inFile(file.toString())
                .expected(
                        "a log in CSV, a map file with a rate or flow for each point, or task data with its TASKDATA.XML")
                .hint(
                        gpx
                                ? "export what the console logged, not the track of a receiver"
                                : "export the log again as CSV");
    }

    private static @Nullable LogContainer inZip(Path file) {
        try (ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.ISO_8859_1)) {
            LogContainer found = null;
            boolean text = false;
            boolean shapes = false;
            for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
                String name = all.nextElement().getName().toLowerCase(Locale.ROOT);
                if (name.startsWith("__macosx/")) {
                    continue;
                }
                if (name.equals("xl/workbook.xml")) {
                    requireSize(file, zip);
                    return SPREADSHEET;
                }
                if (name.endsWith(".csv") || name.endsWith(".tsv")) {
                    return null;
                }
                // A map's zip often has a text that says where it is from.
                text |= name.endsWith(".txt");
                boolean map = name.endsWith(".shp")
                        || name.endsWith(".geojson")
                        || name.endsWith(".json")
                        || name.endsWith(".kml");
                found = map ? ZIPPED_MAP : found;
                shapes |= name.endsWith(".shp");
            }
            return text && !shapes ? null : found;
        } catch (IOException | IllegalArgumentException e) {
            // A damaged zip file gets its message where text is unpacked.
            return null;
        }
    }

    private static void requireSize(Path file, ZipFile zip) throws IOException {
        long unpacked = 0;
        for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
            unpacked += Math.max(0, all.nextElement().getSize());
        }
        boolean bomb = unpacked > MIN_UNPACKED_BYTES && unpacked > MAX_RATIO * Files.size(file);
        if (bomb || unpacked > MAX_UNPACKED_BYTES) {
            throw UnusableInputException.found("a workbook that unpacks to " + (unpacked >> 20) + " MB")
                    .kind(RefusalKind.DECOMPRESSION_BOMB)
                    .inFile(file.toString())
                    .expected("a log")
                    .hint("save the sheet with the log as CSV, and find out where the file comes from");
        }
    }

    /** True for a map file. */
    boolean isMap() {
        return this != SPREADSHEET;
    }

    /** The log as CSV text. */
    Reader text(Path file) throws IOException {
        if (this == SPREADSHEET) {
            SpreadsheetRows rows = new SpreadsheetRows(file);
            return new CsvText(rows, rows);
        }
        return new CsvText(MapPoints.rows(file), () -> {});
    }

    /** The files that a log is read from: itself, and the other parts of a shapefile. */
    static List<Path> files(Path log) {
        return of(log) == SHAPEFILE ? MapReader.files(log) : List.of(log);
    }

    private static byte[] start(Path file) {
        if (!Files.isRegularFile(file)) {
            return new byte[0];
        }
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(START_BYTES);
        } catch (IOException e) {
            // The reader of text says why the file can't be read.
            return new byte[0];
        }
    }

    private static boolean startsWith(byte[] start, byte[] with) {
        return start.length >= with.length && java.util.Arrays.equals(start, 0, with.length, with, 0, with.length);
    }
}
