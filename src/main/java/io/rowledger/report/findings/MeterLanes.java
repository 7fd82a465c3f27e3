package io.rowledger.report.findings;

import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * What a picture of rows draws apart: one lane a row, or one lane a meter where a meter feeds several rows, since the log can't
 * tell these apart.
 *
 * @param rows the rows of each lane, from 1, ascending
 */
public record MeterLanes(List<List<Integer>> rows) {
    /** Copies the lanes. */
    public MeterLanes {
        rows = rows.stream().map(List::copyOf).toList();
    }

    /** Lanes of a bar with a meter for each row. */
    public static MeterLanes ofRows(int count) {
        return new MeterLanes(IntStream.rangeClosed(1, count).mapToObj(List::of).toList());
    }

    /** Lanes of product p of a log, from the left. */
    public static MeterLanes of(LogTable log, int p, int count) {
        if (log.metering(p) != Metering.SHARED) {
            return ofRows(count);
        }
        return new MeterLanes(Arrays.stream(log.meterRows(p))
                .map(meter ->
                        Arrays.stream(meter).map(r -> r + 1).sorted().boxed().toList())
                .sorted((a, b) -> a.get(0) - b.get(0))
                .toList());
    }

    /** True if some lane holds several rows. */
    public boolean shared() {
        return rows.stream().anyMatch(lane -> lane.size() > 1);
    }

    /** The labels of the lanes: 7, or 5, 6, or 5-8, or 1, 4… for more rows apart. */
    public List<String> labels() {
        return rows.stream().map(MeterLanes::label).toList();
    }

    /** The label of the rows of one lane. */
    public static String label(List<Integer> lane) {
        int first = lane.get(0);
        int last = lane.get(lane.size() - 1);
        if (lane.size() == 1) {
            return Integer.toString(first);
        }
        if (lane.size() == 2) {
            return first + ", " + last;
        }
        return last - first == lane.size() - 1 ? first + "-" + last : first + ", " + lane.get(1) + "…";
    }

    /** The picture with a line for each lane: its first row that is known. */
    public RowPicture of(RowPicture picture) {
        if (!shared()) {
            return picture;
        }
        float[][] deviation = new float[rows.size()][picture.columns()];
        for (int lane = 0; lane < deviation.length; lane++) {
            Arrays.fill(deviation[lane], Float.NaN);
            for (int row : rows.get(lane)) {
                for (int c = 0; c < deviation[lane].length; c++) {
                    float value = picture.deviation()[row - 1][c];
                    deviation[lane][c] = Float.isNaN(deviation[lane][c]) ? value : deviation[lane][c];
                }
            }
        }
        return new RowPicture(picture.startS(), picture.endS(), picture.pass(), deviation);
    }

    /** The marks with lanes, from 1, in place of rows. */
    public List<FindingMark> of(List<FindingMark> marks) {
        if (!shared()) {
            return marks;
        }
        List<FindingMark> ofLanes = new ArrayList<>();
        for (FindingMark mark : marks) {
            TreeSet<Integer> lanes = new TreeSet<>();
            for (int lane = 0; lane < rows.size(); lane++) {
                if (rows.get(lane).stream().anyMatch(mark.rows()::contains)) {
                    lanes.add(lane + 1);
                }
            }
            ofLanes.add(new FindingMark(mark.number(), List.copyOf(lanes), mark.fromS(), mark.toS()));
        }
        return ofLanes;
    }
}
