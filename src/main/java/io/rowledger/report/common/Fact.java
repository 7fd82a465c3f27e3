package io.rowledger.report.common;

/** A label and what stands beside it. */
public record Fact(String label, String value) {}
