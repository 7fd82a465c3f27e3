package io.rowledger.rig;

import io.rowledger.finding.UnusableInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.snakeyaml.engine.v2.nodes.Node;

/** The key {@code meters} of the {@code rows:} block: which rows each flow meter feeds. */
final class RowMeters {
    private static final String KEY = "meters";

    private RowMeters() {}

    /**
     * The rows of each meter, ascending; empty without the key, or if each meter feeds one row and they stand in order.
     *
     * @throws UnusableInputException unless each row from 1 to {@code rowCount} has exactly one meter
     */
    static List<List<Integer>> read(YamlMap block, int rowCount) {
        if (!block.hasMore(KEY)) {
            return List.of();
        }
        String what = "the rows of each meter, such as " + example(rowCount);
        List<List<Integer>> meters = new ArrayList<>();
        int[] meterOf = new int[rowCount + 1];
        for (Node item : block.list(KEY, what)) {
            List<Integer> rows = block.wholeNumbers(item, block.child(KEY), what).stream()
                    .sorted()
                    .toList();
            meters.add(rows);
            for (int row : rows) {
                requireNew(block, row, meterOf, meters.size(), what);
                meterOf[row] = meters.size();
            }
        }
        List<Integer> without = IntStream.rangeClosed(1, rowCount)
                .filter(row -> meterOf[row] == 0)
                .boxed()
                .toList();
        if (!without.isEmpty()) {
            throw block.fault(KEY, "no meter for " + rows(without))
                    .expected("each of the " + rowCount + " rows in one meter")
                    .hint("write " + what);
        }
        boolean oneEach = meters.size() == rowCount
                && IntStream.range(0, rowCount).allMatch(i -> meters.get(i).get(0) == i + 1);
        return oneEach ? List.of() : meters;
    }

    private static void requireNew(YamlMap block, int row, int[] meterOf, int meter, String what) {
        int rowCount = meterOf.length - 1;
        if (row < 1 || row > rowCount) {
            throw block.fault(KEY, "row " + row + " in meter " + meter)
                    .expected("rows from 1 to " + rowCount)
                    .hint("write " + what);
        }
        if (meterOf[row] != 0) {
            throw block.fault(KEY, "row " + row + " in meter " + meterOf[row] + " and in meter " + meter)
                    .expected("each row in one meter")
                    .hint("take it out of one of the two");
        }
    }

    /** Pairs of rows, as on a bar with a meter for every two; for one or two rows a single meter. */
    static String example(int rowCount) {
        List<String> pairs = new ArrayList<>();
        for (int row = 1; row <= rowCount; row += 2) {
            pairs.add(row < rowCount ? "[" + row + ", " + (row + 1) + "]" : "[" + row + "]");
        }
        if (pairs.size() > 4) {
            return "[" + pairs.get(0) + ", " + pairs.get(1) + ", ..., " + pairs.get(pairs.size() - 1) + "]";
        }
        return "[" + String.join(", ", pairs) + "]";
    }

    private static String rows(List<Integer> rows) {
        return (rows.size() == 1 ? "row " : "rows ")
                + rows.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
}
