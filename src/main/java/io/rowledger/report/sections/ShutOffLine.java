package io.rowledger.report.sections;

/** What rows shutting off alone did, saved or cost. */
public record ShutOffLine(String what, String area, String liquid) {}
