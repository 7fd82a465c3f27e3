package io.rowledger.log;

/** How rows and meters of a bar belong together; later constants tell less of a single row. */
public enum Metering {
    /** Each row has its own meter. */
    PER_ROW,
    /** A meter feeds several rows: the rows of one meter are not told apart. */
    SHARED,
    /** One meter for the bar: it shows nothing of single rows. */
    WHOLE_BAR
}
