package io.rowledger.coverage.sections;

import io.rowledger.rig.Band;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Outlets that one valve shuts off together.
 *
 * @param kind origin of the grouping
 * @param rows outlets of each group, from 1, ascending; every outlet is in one group
 */
public record Grouping(Kind kind, List<List<Integer>> rows) {
    /** Origin of a grouping. */
    public enum Kind {
        /** Each row has its own valve. */
        ROWS,
        /** Groups named in the rig file. */
        RIG_FILE,
        /** Four groups of neighbors. */
        QUARTERS,
        /** Two groups of neighbors. */
        HALVES,
        /** No row shuts off before the bar is lifted. */
        NONE
    }

    /** Fewest rows for four groups. */
    private static final int MIN_FOR_QUARTERS = 8;

    /** Fewest rows for two groups. */
    private static final int MIN_FOR_HALVES = 4;

    /** Copies the groups. */
    public Grouping {
        rows = rows.stream().map(List::copyOf).toList();
    }

    /**
     * Returns the groupings to compare for a bar: single rows; the rig file's groups if it names any, else quarters and
     * halves; none.
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

    /** Returns groups of neighboring rows of nearly equal size. */
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

    /** Returns the rows by the name of their group; a row without one is a group of its own. */
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

    /** Returns the number of rows of the largest group. */
    public int largest() {
        return rows.stream().mapToInt(List::size).max().orElse(0);
    }

    /** Returns for every outlet (from 0) the outlets (from 0) of its group. */
    int[][] together(int outlets) {
        int[][] out = new int[outlets][];
        for (List<Integer> group : rows) {
            int[] members = group.stream().mapToInt(r -> r - 1).toArray();
            Arrays.stream(members).forEach(r -> out[r] = members);
        }
        return out;
    }
}
