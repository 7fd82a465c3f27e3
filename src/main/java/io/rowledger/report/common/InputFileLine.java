package io.rowledger.report.common;

/** One log with its SHA-256 and the records that were read, used and dropped by reason. */
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
