package io.rowledger.field;

import io.rowledger.text.Message;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * A map of target rates in the job's plane.
 *
 * @param file where it came from
 * @param zones in the order of their first feature; no two have ground in common
 * @param repaired true where a polygon was invalid and had to be repaired
 * @param sliverM2 ground in thin overlaps of zones with different rates, given to the zone that stands first in the file, m²
 * @param notes assumptions made about the file
 */
public record Prescription(String file, List<Zone> zones, boolean repaired, double sliverM2, List<Message> notes) {
    /** Copies the lists. */
    public Prescription {
        zones = List.copyOf(zones);
        notes = List.copyOf(notes);
    }

    /** Zones of a file of which nothing was taken for granted. */
    public Prescription(String file, List<Zone> zones, boolean repaired, double sliverM2) {
        this(file, zones, repaired, sliverM2, List.of());
    }

    /**
     * Ground with one rate: all features of one name, or all features without a name that have the same rates.
     *
     * @param number from 1
     * @param name as the file has it, or empty
     * @param area polygon or multipolygon, valid
     * @param rateLPerM2 per product in rig order; NaN where the file says nothing of a product. Shared, read only.
     */
    public record Zone(int number, String name, Geometry area, double[] rateLPerM2) {
        /** The name, or {@code zone 3} for one without. */
        public String label() {
            return name.isEmpty() ? "zone " + number : name;
        }
    }
}
