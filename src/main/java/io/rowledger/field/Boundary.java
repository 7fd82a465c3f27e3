package io.rowledger.field;

import io.rowledger.text.Message;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * A field's outline in the job's plane.
 *
 * @param file where it came from
 * @param name the feature's name, or empty
 * @param area polygon or multipolygon, valid
 * @param repaired true where the file's polygon was invalid and had to be repaired
 * @param notes assumptions made about the file
 */
public record Boundary(String file, String name, Geometry area, boolean repaired, List<Message> notes) {
    /** Copies the notes. */
    public Boundary {
        notes = List.copyOf(notes);
    }

    /** An outline of which nothing was taken for granted. */
    public Boundary(String file, String name, Geometry area, boolean repaired) {
        this(file, name, area, repaired, List.of());
    }
}
