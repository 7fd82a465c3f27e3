package io.rowledger.maps;

/**
 * What a map file is for, so that a message about it says so.
 *
 * @param file what to call it, for instance {@code boundary}
 * @param holds what it should hold, for instance {@code the field's outline}
 */
public record MapUse(String file, String holds) {
    /** The field's outline. */
    public static final MapUse BOUNDARY = new MapUse("boundary", "the field's outline");

    /** Places to keep away from. */
    public static final MapUse KEEP_OUT = new MapUse("keep-out file", "the places to keep away from");

    /** Points with attributes, one for each record of a log, or polygons with a rate. */
    public static final MapUse LOG = new MapUse("log", "the points of the log, or polygons with a rate");

    /** Zones with a rate each. */
    public static final MapUse PRESCRIPTION = new MapUse("prescription", "zones with a target rate");
}
