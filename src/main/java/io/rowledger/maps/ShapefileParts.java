package io.rowledger.maps;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The files a shapefile consists of, in memory.
 *
 * @param name what to call it in messages
 * @param bytes by ending in lower case, of {@link #ENDS} those that are there; {@code shp} always is
 */
record ShapefileParts(String name, Map<String, byte[]> bytes) {
    /** Shapes, attributes, coordinate system, character set. The index (.shx) is not needed: shapes stand in order. */
    static final List<String> ENDS = List.of("shp", "dbf", "prj", "cpg");

    static ShapefileParts beside(Path shp) {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        parts.put("shp", bytes(shp));
        for (Path peer : peers(shp)) {
            parts.put(end(peer), bytes(peer));
        }
        return new ShapefileParts(shp.toString(), parts);
    }

    /** The other parts beside a .shp file, in the order of {@link #ENDS}. */
    static List<Path> peers(Path shp) {
        String stem = stem(shp);
        Path folder = shp.toAbsolutePath().getParent();
        List<Path> out = new ArrayList<>();
        if (folder == null) {
            return out;
        }
        List<Path> beside;
        try (Stream<Path> list = Files.list(folder)) {
            beside = list.filter(path -> stem(path).equals(stem)).sorted().toList();
        } catch (IOException e) {
            throw MapSize.unreadable(shp.toString(), e);
        }
        for (String end : ENDS.subList(1, ENDS.size())) {
            beside.stream()
                    .filter(path -> end(path).equals(end) && Files.isRegularFile(path))
                    .findFirst()
                    .ifPresent(path -> out.add(shp.resolveSibling(path.getFileName())));
        }
        return out;
    }

    private static String stem(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return dot < 0 ? name : name.substring(0, dot);
    }

    private static String end(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }

    private static byte[] bytes(Path file) {
        MapSize.require(file);
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw MapSize.unreadable(file.toString(), e);
        }
    }

    byte @Nullable [] part(String end) {
        return bytes.get(end);
    }

    byte[] shp() {
        byte[] shp = bytes.get("shp");
        if (shp == null) {
            throw new IllegalStateException("a shapefile without its .shp");
        }
        return shp;
    }

    /** A small part as text, empty where it isn't there. */
    String text(String end) {
        byte[] part = bytes.get(end);
        return part == null
                ? ""
                : new String(part, StandardCharsets.UTF_8).replace("\uFEFF", "").strip();
    }

    UnusableInputException fault(String found) {
        return UnusableInputException.found(found).inFile(name);
    }
}
