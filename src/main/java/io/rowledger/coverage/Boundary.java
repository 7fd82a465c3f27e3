package io.rowledger.coverage;

import org.locationtech.jts.geom.Geometry;

/**
 * A field's outline in the job's plane.
 *
 * @param file where it came from
 * @param name the feature's name, or empty
 * @param area polygon or multipolygon, valid
 * @param repaired true where the file's polygon was invalid and had to be repaired
 */
public record Boundary(String file, String name, Geometry area, boolean repaired) {}
