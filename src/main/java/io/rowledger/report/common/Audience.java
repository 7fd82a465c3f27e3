package io.rowledger.report.common;

import java.util.Locale;

/** Whom a printed report is for. The files for machines are written for everybody. */
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
