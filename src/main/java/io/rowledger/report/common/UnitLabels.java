package io.rowledger.report.common;

/** Units for column headings. */
public record UnitLabels(String area, String length, String volume, String rate, String nitrogenRate, String speed) {}
