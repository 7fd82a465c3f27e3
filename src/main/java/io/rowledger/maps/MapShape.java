package io.rowledger.maps;

import java.util.List;

/**
 * A single point, line or polygon in degrees on WGS 84.
 *
 * @param kind which of the three
 * @param parts arrays of longitude, latitude, longitude, latitude, ...: one of a single position for a point, one for a
 *     line, the closed rings for a polygon, the outer one first. Shared, read only.
 */
public record MapShape(Kind kind, List<double[]> parts) {
    /** What a shape is. */
    public enum Kind {
        POINT,
        LINE,
        POLYGON
    }

    /** Copies the list, not the arrays. */
    public MapShape {
        parts = List.copyOf(parts);
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("a shape has at least one part");
        }
    }
}
