package io.rowledger.coverage.strips;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;

/** Finds the visits whose bounding box meets a box. Built once, then read from any thread. */
public final class VisitIndex {
    private final List<Visit> visits;
    private final HPRtree tree = new HPRtree();

    public VisitIndex(List<Visit> visits) {
        this.visits = visits;
        for (int i = 0; i < visits.size(); i++) {
            tree.insert(visits.get(i).polygon().getEnvelopeInternal(), i);
        }
        tree.build();
    }

    public Visit get(int i) {
        return visits.get(i);
    }

    public int size() {
        return visits.size();
    }

    /** Indices of the visits whose box meets this one, ascending, so that nothing depends on the tree's order. */
    public int[] near(Envelope box) {
        if (visits.isEmpty()) {
            return new int[0];
        }
        List<Integer> found = new ArrayList<>();
        tree.query(box, item -> found.add((Integer) item));
        return found.stream().mapToInt(Integer::intValue).sorted().toArray();
    }

    /** All indices. */
    public IntStream all() {
        return IntStream.range(0, visits.size());
    }
}
