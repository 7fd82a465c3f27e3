package io.rowledger.rig;

import java.util.Map;
import java.util.TreeMap;

/**
 * Which attributes of a prescription map hold what: the {@code prescription:} block of the rig file.
 *
 * @param rate product key to the attribute with its target rate; empty if the block has no {@code rate}
 * @param unit product key to the unit of that rate as written, such as {@code gal/ac} or {@code lb N/ac}; products
 *     without an entry carry the unit in the map
 * @param name attribute with the zone's name; empty if the block has no {@code name}
 */
public record PrescriptionColumns(Map<String, String> rate, Map<String, String> unit, String name) {
    /** A rig file without the block. */
    public static final PrescriptionColumns NONE = new PrescriptionColumns(Map.of(), Map.of(), "");

    /** Copies the maps. */
    public PrescriptionColumns {
        rate = java.util.Collections.unmodifiableMap(new TreeMap<>(rate));
        unit = java.util.Collections.unmodifiableMap(new TreeMap<>(unit));
    }
}
