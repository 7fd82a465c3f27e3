package io.rowledger.log;

/** Which bare numbers in a time column can be seconds since the Unix epoch. */
final class EpochRange {
    /** 1980-01-06, the first day of GPS time: no receiver wrote a log before it. */
    static final double FIRST_S = 315_964_800;

    private EpochRange() {}
}
