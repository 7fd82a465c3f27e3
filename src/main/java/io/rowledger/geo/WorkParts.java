package io.rowledger.geo;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/**
 * Parts of a job's work that lie so far from each other that they may be several fields. Each part is a rectangle on the plane, m;
 * rectangles no farther apart than {@link #MAX_APART_M} are joined.
 */
public final class WorkParts {
    /** Largest distance between two parts of one field, m: a road, a creek or a yard may lie between them. */
    public static final double MAX_APART_M = 400;

    private final List<Envelope> parts = new ArrayList<>();

    /**
     * Adds a piece of work, which joins the parts near it.
     *
     * @param piece on the plane, m; not changed
     * @return true if the piece lies far from all work before it
     */
    public boolean add(Envelope piece) {
        if (!parts.isEmpty() && parts.get(parts.size() - 1).contains(piece)) {
            return false;
        }
        Envelope joined = new Envelope(piece);
        int before = parts.size();
        for (int i = 0; i < parts.size(); ) {
            // A part that grew may now be near one that was passed over: start again.
            if (parts.get(i).distance(joined) <= MAX_APART_M) {
                joined.expandToInclude(parts.remove(i));
                i = 0;
            } else {
                i++;
            }
        }
        parts.add(joined);
        return parts.size() > before;
    }

    /** Returns the parts; read only. */
    public List<Envelope> all() {
        return Collections.unmodifiableList(parts);
    }

    /** Returns the part nearest to a place; there must be one. */
    public Envelope nearest(Envelope place) {
        Envelope nearest = parts.get(0);
        for (Envelope part : parts) {
            if (part.distance(place) < nearest.distance(place)) {
                nearest = part;
            }
        }
        return nearest;
    }

    /** Returns the distance between two of the parts, rounded to 1 m; 0 if all of the work can be one field. */
    public long apartM() {
        return parts.size() > 1 ? Math.round(parts.get(0).distance(parts.get(1))) : 0;
    }
}
