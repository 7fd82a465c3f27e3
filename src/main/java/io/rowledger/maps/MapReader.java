package io.rowledger.maps;

import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Reads a map file of any format the program knows. What it holds decides, not its name: a GeoPackage called
 * {@code boundary.json} is read as a GeoPackage.
 */
public final class MapReader {
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(java.nio.charset.StandardCharsets.US_ASCII);

    private MapReader() {}

    /**
     * All features of the file, in its order.
     *
     * @param file GeoJSON, KML, KMZ, a shapefile (the .shp beside its .dbf and .prj, or a zip of them) or a GeoPackage
     * @param use what the file is for
     * @throws UnusableInputException where the file can't be read or used, or does not say what must be known
     */
    public static MapFeatures read(Path file, MapUse use) {
        String part = partOfShapefile(file);
        if (!part.isEmpty() && Files.exists(file)) {
            throw UnusableInputException.found("a ." + part + " file, one part of a shapefile")
                    .inFile(file.toString())
                    .expected("the .shp file, with the others beside it")
                    .hint("name the .shp file, or a zip of all its parts");
        }
        RegularFile.requireRegular(file, "a map file: GeoJSON, KML, a shapefile or a GeoPackage");
        byte[] start = start(file);
        if (startsWith(start, SQLITE)) {
            MapSize.require(file);
            return GeoPackageFeatures.read(file, use);
        }
        if (startsWith(start, 'P', 'K')) {
            MapSize.require(file);
            return MapArchive.read(file, use);
        }
        if (startsWith(start, 0, 0, 0x27, 0x0A)) {
            return ShapefileFeatures.read(ShapefileParts.beside(file), use);
        }
        if (startsWith(start, 0x1F, 0x8B)) {
            throw UnusableInputException.found("a gzip file")
                    .inFile(file.toString())
                    .expected("GeoJSON, KML, a shapefile or a GeoPackage")
                    .hint("unpack it and name what was in it");
        }
        if (isXml(start)) {
            MapSize.require(file);
            return KmlFeatures.read(file, use);
        }
        if (start.length > 0) {
            MapSize.require(file);
        }
        return GeoJsonFeatures.read(file, use);
    }

    /** The files that {@link #read} of this one reads: itself, and the other parts of a shapefile. */
    public static List<Path> files(Path file) {
        List<Path> all = new ArrayList<>(List.of(file));
        if (startsWith(start(file), 0, 0, 0x27, 0x0A)) {
            all.addAll(ShapefileParts.peers(file));
        }
        return all;
    }

    private static String partOfShapefile(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        String end = name.substring(name.lastIndexOf('.') + 1);
        return List.of("dbf", "shx", "prj", "cpg", "sbn", "sbx").contains(end) ? end : "";
    }

    /** Empty where the file can't be opened: the reader of plain text says so. */
    private static byte[] start(Path file) {
        if (!Files.isRegularFile(file)) {
            return new byte[0];
        }
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(64);
        } catch (IOException e) {
            return new byte[0];
        }
    }

    /** An angle bracket first of all, in any encoding that has it as that byte, or UTF-16 with its mark. */
    static boolean isXml(byte[] start) {
        for (byte b : start) {
            boolean skipped = b == 0 || b == ' ' || b == '\t' || b == '\r' || b == '\n' || b < 0;
            if (!skipped) {
                return b == '<';
            }
        }
        return false;
    }

    private static boolean startsWith(byte[] start, int... bytes) {
        if (start.length < bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if ((start[i] & 0xFF) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    private static boolean startsWith(byte[] start, byte[] bytes) {
        return start.length >= bytes.length && java.util.Arrays.equals(start, 0, bytes.length, bytes, 0, bytes.length);
    }
}
