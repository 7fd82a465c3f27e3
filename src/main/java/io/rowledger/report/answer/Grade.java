package io.rowledger.report.answer;

/** How well a part of a job came out; in order, so that the worst part is named first. */
enum Grade {
    FINE,
    NEARLY,
    OFF;

    /** The grade of a share or deviation, percent; FINE if it is not known. */
    static Grade of(double pct, double watchPct, double actPct) {
        return pct > actPct ? OFF : pct > watchPct ? NEARLY : FINE;
    }
}
