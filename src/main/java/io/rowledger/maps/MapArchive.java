package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * A map in a zip file: a shapefile with its parts, a KML file (KMZ, OGC 12-007 annex C) or GeoJSON. Everything is read in
 * memory and nothing is unpacked to the disk; names that climb out of the archive are refused all the same, because nobody
 * writes them by accident.
 */
final class MapArchive {
    /** More files than any map has. */
    private static final int MAX_ENTRIES = 1000;

    private MapArchive() {}

    static MapFeatures read(Path file, MapUse use) {
        // ISO 8859-1 has a character for every byte: names in an old code page must not make a map unreadable.
        try (ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.ISO_8859_1)) {
            Map<String, ZipEntry> entries = entries(file, zip);
            ZipEntry map = map(file, entries);
            String inside = file + " (" + map.getName() + ")";
            String name = map.getName().toLowerCase(Locale.ROOT);
            if (name.endsWith(".shp")) {
                return ShapefileFeatures.read(parts(file, zip, entries, map, inside), use);
            }
            InputStream in = new ByteArrayInputStream(bytes(file, zip, map));
            return name.endsWith(".kml") ? KmlFeatures.read(inside, in, use) : GeoJsonFeatures.read(inside, in, use);
        } catch (IOException e) {
            throw UnusableInputException.found("a damaged zip file")
                    .inFile(file.toString())
                    .expected("a zip file with a shapefile, KML or GeoJSON in it")
                    .hint("export the " + use.file() + " again");
        }
    }

    private static Map<String, ZipEntry> entries(Path file, ZipFile zip) {
        if (zip.size() > MAX_ENTRIES) {
            throw UnusableInputException.found("a zip file of " + zip.size() + " files")
                    .inFile(file.toString())
                    .expected("one map")
                    .hint("put this map alone into a zip file");
        }
        Map<String, ZipEntry> out = new LinkedHashMap<>();
        for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
            ZipEntry entry = all.nextElement();
            String name = entry.getName().replace('\\', '/');
            if (name.startsWith("/")
                    || name.matches("^[A-Za-z]:.*")
                    || List.of(name.split("/", -1)).contains("..")) {
                throw UnusableInputException.found("a zip file with the path " + entry.getName() + " in it")
                        .inFile(file.toString())
                        .expected("paths inside the archive")
                        .hint("don't trust this file; ask whoever sent it for the map alone");
            }
            String key = name.toLowerCase(Locale.ROOT);
            // What some systems add of their own: "._name" files and a folder for them.
            boolean hidden = key.startsWith("__macosx/")
                    || key.substring(key.lastIndexOf('/') + 1).startsWith(".");
            if (!entry.isDirectory() && !hidden) {
                out.put(key, entry);
            }
        }
        return out;
    }

    private static ZipEntry map(Path file, Map<String, ZipEntry> entries) {
        List<String> maps = new ArrayList<>();
        for (String end : List.of(".shp", ".kml", ".geojson", ".json")) {
            entries.keySet().stream().filter(name -> name.endsWith(end)).forEach(maps::add);
        }
        // A KMZ names its main file, and keeps others in folders.
        List<String> top = maps.stream().filter(name -> name.equals("doc.kml")).toList();
        List<String> found = top.size() == 1 ? top : maps;
        if (found.isEmpty()) {
            throw UnusableInputException.found("a zip file without a map")
                    .inFile(file.toString())
                    .expected("a shapefile (.shp, .dbf, .prj), .kml or .geojson in it")
                    .hint("zip the parts of the map together; a GeoPackage needs no zip");
        }
        if (found.size() > 1) {
            throw UnusableInputException.found("a zip file with several maps: " + String.join(", ", found))
                    .inFile(file.toString())
                    .expected("one map")
                    .hint("put the one that is meant into a zip file alone, with its parts");
        }
        return entry(entries, found.get(0));
    }

    private static ZipEntry entry(Map<String, ZipEntry> entries, String name) {
        ZipEntry entry = entries.get(name);
        if (entry == null) {
            throw new IllegalStateException("no entry " + name);
        }
        return entry;
    }

    private static ShapefileParts parts(
            Path file, ZipFile zip, Map<String, ZipEntry> entries, ZipEntry shp, String inside) throws IOException {
        String key = shp.getName().replace('\\', '/').toLowerCase(Locale.ROOT);
        String stem = key.substring(0, key.length() - 4);
        Map<String, byte[]> parts = new LinkedHashMap<>();
        for (String end : ShapefileParts.ENDS) {
            ZipEntry part = entries.get(stem + "." + end);
            if (part != null) {
                parts.put(end, bytes(file, zip, part));
            }
        }
        return new ShapefileParts(inside, parts);
    }

    /** Unpacks with an eye on the size: what an archive says of its sizes need not be so. */
    private static byte[] bytes(Path file, ZipFile zip, ZipEntry entry) throws IOException {
        try (InputStream in = zip.getInputStream(entry)) {
            byte[] bytes = in.readNBytes((int) MapSize.MAX_BYTES + 1);
            if (bytes.length > MapSize.MAX_BYTES) {
                throw MapSize.tooLarge(file + " (" + entry.getName() + ")");
            }
            return bytes;
        }
    }
}
