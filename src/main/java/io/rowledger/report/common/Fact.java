package io.rowledger.report.common;

/** A label and its value. */
public record Fact(String label, String value) {}
