package io.rowledger.coverage.sections;

import io.rowledger.rig.Band;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which outlets one valve shuts off together.
 *
 * @param kind where the grouping comes from
 * @param rows outlets of each group, from 1, ascending; every outlet is in one group
 */
public record Grouping(Kind kind, List<List<Integer>> rows) {
    /** Where a grouping comes from. */
    public enum Kind {
        /** Each row has its own valve. */
        ROWS,
        /** Groups named in the rig file. */
        RIG_FILE,
        /** Four groups of neighbours. */
        QUARTERS,
        /** Two groups of neighbours. */
        HALVES,
        /** No row shuts off before the bar is lifted. */
        NONE
    }

    /** A bar of fewer rows is not worth four valves. */
    private static final int MIN_FOR_QUARTERS = 8;

    /** A bar of fewer rows is not worth two. */
    private static final int MIN_FOR_HALVES = 4;

    /** Copies the groups. */
    public Grouping {
        rows = rows.stream().map(List::copyOf).toList();
    }

    /**
     * The groupings worth comparing for a bar: row by row, then the rig file's groups where it names any, else quarters
     * and halves, last none.
     */
    public static List<Grouping> candidates(List<Band> bands) {
        List<Grouping> out = new ArrayList<>();
        out.add(even(Kind.ROWS, bands.size(), bands.size()));
        Grouping named = named(bands);
        if (named.rows.size() > 1 && named.rows.size() < bands.size()) {
            out.add(named);
        } else {
            if (bands.size() >= MIN_FOR_QUARTERS) {
                out.add(even(Kind.QUARTERS, bands.size(), 4));
            }
            if (bands.size() >= MIN_FOR_HALVES) {
                out.add(even(Kind.HALVES, bands.size(), 2));
            }
        }
        out.add(even(Kind.NONE, bands.size(), 1));
        return out;
    }

    /** So many groups of neighbours, as even as they can be. */
    private static Grouping even(Kind kind, int rows, int groups) {
        List<List<Integer>> out = new ArrayList<>();
        for (int g = 0; g < groups; g++) {
            List<Integer> group = new ArrayList<>();
            for (int r = g * rows / groups; r < (g + 1) * rows / groups; r++) {
                group.add(r + 1);
            }
            out.add(group);
        }
        return new Grouping(kind, out);
    }

    /** Rows by the name of their group; a row without one has a valve of its own. */
    private static Grouping named(List<Band> bands) {
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        boolean any = false;
        for (Band band : bands) {
            String group = band.section();
            any |= group != null;
            String key = group == null ? "\0" + band.row() : group;
            groups.computeIfAbsent(key, g -> new ArrayList<>()).add(band.row());
        }
        return any ? new Grouping(Kind.RIG_FILE, List.copyOf(groups.values())) : new Grouping(Kind.RIG_FILE, List.of());
    }

    /** Rows of the largest group. */
    public int largest() {
        return rows.stream().mapToInt(List::size).max().orElse(0);
    }

    /** For every outlet (from 0) the outlets (from 0) that shut off with it. */
    int[][] together(int outlets) {
        int[][] out = new int[outlets][];
        for (List<Integer> group : rows) {
            int[] members = group.stream().mapToInt(r -> r - 1).toArray();
            Arrays.stream(members).forEach(r -> out[r] = members);
        }
        return out;
    }
}
