package io.rowledger.field;

import org.locationtech.jts.geom.Geometry;

/**
 * A place to keep away from, and the ground that is closer to it than its user's own setback.
 *
 * @param number the feature's place in the file, from 1
 * @param name the feature's name, or {@code Feature 3}
 * @param setbackM how far to keep away, as the user gave it, m; 0 keeps out of a polygon itself
 * @param place points, lines and polygons in the job's plane
 * @param ground closer to the place than the setback, the inside of polygons with it: polygon or multipolygon; empty for
 *     points and lines with a setback of 0
 * @param repaired true where an outline was invalid and had to be repaired
 */
public record KeepOut(int number, String name, double setbackM, Geometry place, Geometry ground, boolean repaired) {}
