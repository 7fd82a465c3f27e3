package io.rowledger.report;

/** Units for column headings. */
public record UnitLabels(
        String area, String length, String volume, String rate, String nitrogenRate, String speed) {}
