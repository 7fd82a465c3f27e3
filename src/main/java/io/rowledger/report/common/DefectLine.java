package io.rowledger.report.common;

/** One place to drive back to; the number stands on the map. */
public record DefectLine(
        String number,
        String area,
        String where,
        String passes,
        String rows,
        String cause,
        double eastM,
        double northM) {}
