package io.rowledger.maps;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * One thing of a map file: where it is and what the file says about it.
 *
 * @param number its place in the file, from 1
 * @param line where it begins in the file, from 1; 0 where the format has no lines
 * @param types the kinds of its geometries as the format calls them, each once, such as {@code MultiPolygon}; also those
 *     that give no shape
 * @param shapes its points, lines and polygons; multiple geometries and collections are laid out flat. Empty where the
 *     feature has no place.
 * @param properties in the file's order; those without a value, and lists and objects, are left out
 */
public record MapFeature(
        int number, int line, List<String> types, List<MapShape> shapes, List<MapProperty> properties) {
    private static final Pattern SEPARATORS = Pattern.compile("[\\s_\\-]+");

    /** Copies the lists. */
    public MapFeature {
        types = List.copyOf(types);
        shapes = List.copyOf(shapes);
        properties = List.copyOf(properties);
    }

    /** The property {@code name}, empty without one. */
    public String name() {
        for (MapProperty property : properties) {
            if (property.name().strip().equalsIgnoreCase("name")) {
                return property.text().strip();
            }
        }
        return "";
    }

    /** The name, or what stands for one: {@code Feature 3}. */
    public String nameOrNumber() {
        String name = name();
        return name.isEmpty() ? "Feature " + number : name;
    }

    /** All properties of this name, whatever unit stands behind it, case, blanks, underscores and hyphens. */
    public List<MapProperty> called(String name) {
        String plain = plain(name);
        return properties.stream()
                .filter(p -> plain(p.plainName()).equals(plain))
                .toList();
    }

    private static String plain(String name) {
        return SEPARATORS.matcher(name.toLowerCase(Locale.ROOT)).replaceAll("");
    }
}
