package io.rowledger.report.findings;

import java.util.List;

/**
 * The picture of one product.
 *
 * @param key its key in the rig file
 * @param name its name
 * @param size how many rows it has to hold: "few", "some" or "many"
 * @param data what to draw
 * @param target true if the rows have a target to be held against
 * @param marks where findings lie in it
 */
public record RowPictureFigure(
        String key, String name, String size, RowPicture data, boolean target, List<FindingMark> marks) {
    /** Copies the marks. */
    public RowPictureFigure {
        marks = List.copyOf(marks);
    }

    /** True where there is anything to draw. */
    public boolean drawable() {
        return data.columns() > 0;
    }
}
