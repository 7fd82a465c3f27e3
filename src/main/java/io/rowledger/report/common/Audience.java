package io.rowledger.report.common;

import java.util.Locale;

/** Readers of the printed reports; files for machines are always written. */
public enum Audience {
    /** The pass review. */
    APPLICATOR,
    /** The nitrogen record. */
    LANDLORD,
    /** The row diagnosis. */
    DEALER;

    /** The word on the command line. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
