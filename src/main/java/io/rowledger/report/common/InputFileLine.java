package io.rowledger.report.common;

/** One log. */
public record InputFileLine(
        String file,
        String records,
        String used,
        String noFix,
        String duplicate,
        String outOfOrder,
        String jump,
        String frozen,
        String unreadable,
        String sha256) {}
