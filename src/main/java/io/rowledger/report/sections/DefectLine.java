package io.rowledger.report.sections;

import io.rowledger.report.common.GeoLink;

/**
 * One place to drive back to.
 *
 * @param number its name on maps and in lists, such as {@code S1}
 * @param area with its unit
 * @param from a point of it; of a long one, the end that was reached first
 * @param to the other end of a long one, else {@link GeoLink#NONE}
 * @param passes beside or in it
 * @param rows beside or in it
 * @param cause likely cause
 * @param eastM a point of it, m
 * @param northM a point of it, m
 */
public record DefectLine(
        String number,
        String area,
        GeoLink from,
        GeoLink to,
        String passes,
        String rows,
        String cause,
        double eastM,
        double northM) {
    /** A point of it as plain coordinates. */
    public String where() {
        return from.text();
    }

    /** True if it has an end of its own. */
    public boolean isLong() {
        return !to.text().isEmpty();
    }
}
