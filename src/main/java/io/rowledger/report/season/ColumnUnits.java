package io.rowledger.report.season;

/** Units for column headings. */
public record ColumnUnits(String area, String volume, String mass, String nitrogenRate) {}
