package io.rowledger.coverage.strips;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;

/** Spatial index of visits by bounding box. Immutable and thread-safe after construction. */
public final class VisitIndex {
    private final List<Visit> visits;
    private final HPRtree tree = new HPRtree();

    /** Builds the index. */
    public VisitIndex(List<Visit> visits) {
        this.visits = visits;
        for (int i = 0; i < visits.size(); i++) {
            tree.insert(visits.get(i).polygon().getEnvelopeInternal(), i);
        }
        tree.build();
    }

    /** Returns visit i. */
    public Visit get(int i) {
        return visits.get(i);
    }

    /** Returns the number of visits. */
    public int size() {
        return visits.size();
    }

    /** Returns the indices of the visits whose bounding box meets the box, ascending. */
    public int[] near(Envelope box) {
        if (visits.isEmpty()) {
            return new int[0];
        }
        List<Integer> found = new ArrayList<>();
        tree.query(box, item -> found.add((Integer) item));
        return found.stream().mapToInt(Integer::intValue).sorted().toArray();
    }

    /** Returns all indices. */
    public IntStream all() {
        return IntStream.range(0, visits.size());
    }
}
